package io.github.platenwire.cli;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.LoggerContext;
import ch.qos.logback.classic.encoder.PatternLayoutEncoder;
import ch.qos.logback.classic.spi.Configurator;
import ch.qos.logback.classic.spi.ConfiguratorRank;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.rolling.FixedWindowRollingPolicy;
import ch.qos.logback.core.rolling.RollingFileAppender;
import ch.qos.logback.core.rolling.TriggeringPolicyBase;
import ch.qos.logback.core.spi.ContextAwareBase;
import ch.qos.logback.core.status.NopStatusListener;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.slf4j.LoggerFactory;

/**
 * Sets up the log. Until a lab folder is known nothing is logged anywhere; afterwards into {@code
 * logs/platenwire.log} of that folder, never to the console. A log that cannot be written is given
 * up silently: it must not stop a test. Safe for any thread.
 */
public final class Logging {
  private static final String PATTERN =
      "%d{\"yyyy-MM-dd'T'HH:mm:ss.SSS'Z'\", UTC} %-5level [%thread] %logger{0}: %msg\n%ex";
  private static final long FILE_BYTES = 2L * 1024 * 1024;
  private static final int OLD_FILES = 9;

  private static boolean begun;

  private Logging() {}

  /**
   * Logs into a lab folder from now on, in place of any earlier one. At 2 MB the file becomes
   * {@code platenwire.1.log} and a new one begins; nine older ones are kept, 20 MB together. Files
   * are counted, not dated: Logback deletes old dated ones on a thread of its own, and now and then
   * takes today's for old.
   *
   * @param folder the lab folder
   */
  public static synchronized void toFolder(Path folder) {
    Path logs = folder.resolve("logs");
    begun = true;
    LoggerContext context = quiet();
    try {
      Files.createDirectories(logs);
    } catch (IOException e) {
      return;
    }
    RollingFileAppender<ILoggingEvent> appender = appender(context, logs);
    appender.start();
    if (appender.isStarted()) {
      Logger root = context.getLogger(org.slf4j.Logger.ROOT_LOGGER_NAME);
      root.addAppender(appender);
      root.setLevel(Level.INFO);
    }
  }

  /** Ends logging and gives the file back. Where nothing was logged nothing is set up for it. */
  public static synchronized void stop() {
    if (begun) {
      quiet();
    }
  }

  private static LoggerContext quiet() {
    LoggerContext context = (LoggerContext) LoggerFactory.getILoggerFactory();
    Logger root = context.getLogger(org.slf4j.Logger.ROOT_LOGGER_NAME);
    root.setLevel(Level.OFF);
    root.detachAndStopAllAppenders();
    return context;
  }

  private static RollingFileAppender<ILoggingEvent> appender(LoggerContext context, Path logs) {
    PatternLayoutEncoder encoder = new PatternLayoutEncoder();
    encoder.setContext(context);
    encoder.setCharset(StandardCharsets.UTF_8);
    encoder.setPattern(PATTERN);
    encoder.start();

    RollingFileAppender<ILoggingEvent> appender = new RollingFileAppender<>();
    appender.setContext(context);
    appender.setName("lab");
    appender.setFile(logs.resolve("platenwire.log").toString());
    appender.setEncoder(encoder);

    FullFile trigger = new FullFile();
    trigger.setContext(context);
    trigger.start();

    FixedWindowRollingPolicy policy = new FixedWindowRollingPolicy();
    policy.setContext(context);
    policy.setParent(appender);
    policy.setFileNamePattern(logs.resolve("platenwire.%i.log").toString());
    policy.setMinIndex(1);
    policy.setMaxIndex(OLD_FILES);
    policy.start();
    appender.setTriggeringPolicy(trigger);
    appender.setRollingPolicy(policy);
    return appender;
  }

  /**
   * Starts a new file once the old one is full. It looks at each event: the library's own policy
   * looks at times of day only, so a clock set back lets a file grow beyond its bound.
   */
  private static final class FullFile extends TriggeringPolicyBase<ILoggingEvent> {
    @Override
    public boolean isTriggeringEvent(File file, ILoggingEvent event) {
      return file.length() >= FILE_BYTES;
    }
  }

  /** Found by Logback when the first logger is made; keeps it from writing to the console. */
  @ConfiguratorRank(ConfiguratorRank.CUSTOM_HIGH_PRIORITY)
  public static final class Silence extends ContextAwareBase implements Configurator {
    /** Made by Logback. */
    public Silence() {}

    @Override
    public ExecutionStatus configure(LoggerContext context) {
      context.getStatusManager().add(new NopStatusListener());
      context.getLogger(org.slf4j.Logger.ROOT_LOGGER_NAME).setLevel(Level.OFF);
      return ExecutionStatus.DO_NOT_INVOKE_NEXT_IF_ANY;
    }
  }
}
