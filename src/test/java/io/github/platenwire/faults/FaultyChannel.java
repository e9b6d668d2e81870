package io.github.platenwire.faults;

import io.github.platenwire.faults.DiskModel.Step;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.MappedByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.ReadableByteChannel;
import java.nio.channels.WritableByteChannel;
import java.nio.file.Path;

/** A channel of a {@link FaultyDisk}: passes everything on, after the model had its say. */
final class FaultyChannel extends FileChannel {
  private final FileChannel real;
  private final Path file;
  private final DiskModel model;

  FaultyChannel(FileChannel real, Path file, DiskModel model) {
    this.real = real;
    this.file = file;
    this.model = model;
  }

  @Override
  public int write(ByteBuffer bytes) throws IOException {
    model.step(Step.WRITE, file);
    int through = model.bytesBeforeDeath(file, bytes);
    if (through >= 0) {
      real.write(bytes.slice(bytes.position(), through));
      Death.now();
    }
    return real.write(bytes);
  }

  @Override
  public long write(ByteBuffer[] bytes, int offset, int length) throws IOException {
    model.step(Step.WRITE, file);
    return real.write(bytes, offset, length);
  }

  @Override
  public int write(ByteBuffer bytes, long position) throws IOException {
    model.step(Step.WRITE, file);
    return real.write(bytes, position);
  }

  @Override
  public void force(boolean metaData) throws IOException {
    model.step(Step.FORCE, file);
    real.force(metaData);
    model.forced(file);
    model.done(Step.FORCE, file);
  }

  @Override
  public FileChannel truncate(long size) throws IOException {
    model.step(Step.TRUNCATE, file);
    real.truncate(size);
    return this;
  }

  @Override
  public int read(ByteBuffer into) throws IOException {
    return real.read(into);
  }

  @Override
  public long read(ByteBuffer[] into, int offset, int length) throws IOException {
    return real.read(into, offset, length);
  }

  @Override
  public int read(ByteBuffer into, long position) throws IOException {
    return real.read(into, position);
  }

  @Override
  public long position() throws IOException {
    return real.position();
  }

  @Override
  public FileChannel position(long position) throws IOException {
    real.position(position);
    return this;
  }

  @Override
  public long size() throws IOException {
    return real.size();
  }

  @Override
  public long transferTo(long position, long count, WritableByteChannel target) throws IOException {
    return real.transferTo(position, count, target);
  }

  @Override
  public long transferFrom(ReadableByteChannel source, long position, long count)
      throws IOException {
    model.step(Step.WRITE, file);
    return real.transferFrom(source, position, count);
  }

  @Override
  public MappedByteBuffer map(MapMode mode, long position, long size) throws IOException {
    return real.map(mode, position, size);
  }

  @Override
  public FileLock lock(long position, long size, boolean shared) throws IOException {
    return real.lock(position, size, shared);
  }

  @Override
  public FileLock tryLock(long position, long size, boolean shared) throws IOException {
    return real.tryLock(position, size, shared);
  }

  @Override
  protected void implCloseChannel() throws IOException {
    real.close();
  }
}
