package io.github.platenwire.method;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;

/** Counts the bytes that some work of this thread allocates. */
final class Allocated {
  private Allocated() {}

  static long by(Runnable work) {
    ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    long thread = Thread.currentThread().getId();
    threads.getThreadAllocatedBytes(thread);
    long empty = threads.getThreadAllocatedBytes(thread);
    long cost = threads.getThreadAllocatedBytes(thread) - empty;
    long before = threads.getThreadAllocatedBytes(thread);
    work.run();
    return threads.getThreadAllocatedBytes(thread) - before - cost;
  }
}
