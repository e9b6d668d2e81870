package io.github.platenwire.faults;

import io.github.platenwire.faults.DiskModel.Step;
import java.io.IOException;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Proxy;
import java.net.URI;
import java.nio.channels.FileChannel;
import java.nio.channels.SeekableByteChannel;
import java.nio.file.AccessMode;
import java.nio.file.CopyOption;
import java.nio.file.DirectoryStream;
import java.nio.file.FileStore;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.OpenOption;
import java.nio.file.Path;
import java.nio.file.PathMatcher;
import java.nio.file.StandardOpenOption;
import java.nio.file.WatchService;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.FileAttributeView;
import java.nio.file.attribute.UserPrincipalLookupService;
import java.nio.file.spi.FileSystemProvider;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * A file system over a real folder that can fail at any step, and that knows what a power cut would
 * leave. The program's own code runs on it unchanged: only its paths are others. Safe for any
 * thread.
 */
public final class FaultyDisk {
  private final Path root;
  private final DiskModel model;
  private final FileSystem fileSystem = new Disk();
  private final FileSystemProvider provider = new Provider();

  /**
   * Takes what is in a folder as kept.
   *
   * @param root a folder of the real file system
   */
  public FaultyDisk(Path root) throws IOException {
    this.root = root.toRealPath();
    this.model = new DiskModel(this.root);
    model.settle();
  }

  /** The folder as a path of this file system. */
  public Path root() {
    return wrap(root);
  }

  /** The real path of one of this file system. */
  public Path real(Path path) {
    return unwrap(path);
  }

  /** Fails at the n-th step that changes the disk from now on, once. */
  public void failOnceAt(int step, String words) {
    model.failAt(step, false, words);
  }

  /** Fails at the n-th step that changes the disk from now on, and at all later ones. */
  public void failFrom(int step, String words) {
    model.failAt(step, true, words);
  }

  /** From now on writes what a power cut before each step would leave into a folder each, 1, 2 … */
  public void cutBeforeEachStepInto(Path folder) {
    model.cutBeforeEachStepInto(folder);
  }

  /** Ends this very process at a step. */
  public void dieAt(Death death) {
    model.dieAt(death);
  }

  /** Fails no more. */
  public void heal() {
    model.heal();
  }

  /** Every step since the last order to fail. */
  public List<String> steps() {
    return model.steps();
  }

  /** How many bytes of a file a power cut now would leave; empty if not even its name. */
  public Optional<Integer> durableLength(Path path) {
    return model.durableLength(unwrap(path));
  }

  /** Writes what a power cut now would leave into a new folder. */
  public void cutPowerInto(Path folder) throws IOException {
    model.cutPowerInto(folder);
  }

  private Path wrap(Path real) {
    return (Path)
        Proxy.newProxyInstance(
            FaultyDisk.class.getClassLoader(),
            new Class<?>[] {Path.class},
            (proxy, method, args) -> {
              return switch (method.getName()) {
                case "getFileSystem" -> fileSystem;
                case "toFile" -> real.toFile();
                case "equals" -> isOurs(args[0]) && real.equals(unwrap((Path) args[0]));
                case "iterator" -> iterator(real);
                default -> call(real, method, args);
              };
            });
  }

  private @Nullable Object call(Path real, java.lang.reflect.Method method, Object[] args)
      throws Throwable {
    Object[] plain = args == null ? new Object[0] : args.clone();
    for (int i = 0; i < plain.length; i++) {
      plain[i] = plain[i] instanceof Path path ? unwrap(path) : plain[i];
    }
    try {
      Object result = method.invoke(real, plain);
      return result instanceof Path path ? wrap(path) : result;
    } catch (InvocationTargetException e) {
      throw e.getCause();
    }
  }

  private Iterator<Path> iterator(Path real) {
    List<Path> parts = new ArrayList<>();
    real.forEach(part -> parts.add(wrap(part)));
    return parts.iterator();
  }

  private boolean isOurs(@Nullable Object other) {
    return other instanceof Path path && path.getFileSystem() == fileSystem;
  }

  private Path unwrap(Path path) {
    return isOurs(path) ? Path.of(path.toString()) : path;
  }

  private final class Provider extends FileSystemProvider {
    private final FileSystemProvider real = FileSystems.getDefault().provider();

    @Override
    public FileChannel newFileChannel(
        Path path, Set<? extends OpenOption> options, FileAttribute<?>... attributes)
        throws IOException {
      Path file = unwrap(path);
      boolean makes =
          options.contains(StandardOpenOption.CREATE_NEW)
              || (options.contains(StandardOpenOption.CREATE) && !Files.exists(file));
      if (makes) {
        model.step(Step.CREATE, file);
      }
      FileChannel channel = FileChannel.open(file, options, attributes);
      if (makes) {
        model.created(file);
      }
      return new FaultyChannel(channel, file, model);
    }

    @Override
    public SeekableByteChannel newByteChannel(
        Path path, Set<? extends OpenOption> options, FileAttribute<?>... attributes)
        throws IOException {
      return newFileChannel(path, options, attributes);
    }

    @Override
    public DirectoryStream<Path> newDirectoryStream(
        Path folder, DirectoryStream.Filter<? super Path> filter) throws IOException {
      List<Path> entries = new ArrayList<>();
      try (DirectoryStream<Path> stream = Files.newDirectoryStream(unwrap(folder))) {
        for (Path entry : stream) {
          Path wrapped = wrap(entry);
          if (filter.accept(wrapped)) {
            entries.add(wrapped);
          }
        }
      }
      return new DirectoryStream<>() {
        @Override
        public Iterator<Path> iterator() {
          return entries.iterator();
        }

        @Override
        public void close() {}
      };
    }

    @Override
    public void createDirectory(Path folder, FileAttribute<?>... attributes) throws IOException {
      Path plain = unwrap(folder);
      model.step(Step.CREATE, plain);
      real.createDirectory(plain, attributes);
      model.created(plain);
    }

    @Override
    public void delete(Path path) throws IOException {
      Path plain = unwrap(path);
      if (Files.exists(plain)) {
        model.step(Step.DELETE, plain);
      }
      real.delete(plain);
      model.deleted(plain);
    }

    @Override
    public void copy(Path from, Path to, CopyOption... options) throws IOException {
      throw new UnsupportedOperationException("nothing that is tested copies files");
    }

    @Override
    public void move(Path from, Path to, CopyOption... options) throws IOException {
      model.step(Step.MOVE, unwrap(to));
      real.move(unwrap(from), unwrap(to), options);
      model.moved(unwrap(from), unwrap(to));
      model.done(Step.MOVE, unwrap(to));
    }

    @Override
    public boolean isSameFile(Path path, Path other) throws IOException {
      return real.isSameFile(unwrap(path), unwrap(other));
    }

    @Override
    public boolean isHidden(Path path) throws IOException {
      return real.isHidden(unwrap(path));
    }

    @Override
    public FileStore getFileStore(Path path) throws IOException {
      return real.getFileStore(unwrap(path));
    }

    @Override
    public void checkAccess(Path path, AccessMode... modes) throws IOException {
      real.checkAccess(unwrap(path), modes);
    }

    @Override
    public <V extends FileAttributeView> @Nullable V getFileAttributeView(
        Path path, Class<V> type, LinkOption... options) {
      return real.getFileAttributeView(unwrap(path), type, options);
    }

    @Override
    public <A extends BasicFileAttributes> A readAttributes(
        Path path, Class<A> type, LinkOption... options) throws IOException {
      return real.readAttributes(unwrap(path), type, options);
    }

    @Override
    public Map<String, Object> readAttributes(Path path, String names, LinkOption... options)
        throws IOException {
      return real.readAttributes(unwrap(path), names, options);
    }

    @Override
    public void setAttribute(Path path, String name, Object value, LinkOption... options)
        throws IOException {
      real.setAttribute(unwrap(path), name, value, options);
    }

    @Override
    public String getScheme() {
      return "faulty";
    }

    @Override
    public FileSystem newFileSystem(URI uri, Map<String, ?> settings) {
      throw new UnsupportedOperationException("made by its constructor only");
    }

    @Override
    public FileSystem getFileSystem(URI uri) {
      return fileSystem;
    }

    @Override
    public Path getPath(URI uri) {
      return wrap(Path.of(uri.getPath()));
    }
  }

  private final class Disk extends FileSystem {
    private final FileSystem real = FileSystems.getDefault();

    @Override
    public FileSystemProvider provider() {
      return provider;
    }

    @Override
    public void close() {}

    @Override
    public boolean isOpen() {
      return true;
    }

    @Override
    public boolean isReadOnly() {
      return false;
    }

    @Override
    public String getSeparator() {
      return real.getSeparator();
    }

    @Override
    public Iterable<Path> getRootDirectories() {
      return List.of(root());
    }

    @Override
    public Iterable<FileStore> getFileStores() {
      return real.getFileStores();
    }

    @Override
    public Set<String> supportedFileAttributeViews() {
      return real.supportedFileAttributeViews();
    }

    @Override
    public Path getPath(String first, String... more) {
      return wrap(Path.of(first, more));
    }

    @Override
    public PathMatcher getPathMatcher(String pattern) {
      PathMatcher matcher = real.getPathMatcher(pattern);
      return path -> matcher.matches(unwrap(path));
    }

    @Override
    public UserPrincipalLookupService getUserPrincipalLookupService() {
      return real.getUserPrincipalLookupService();
    }

    @Override
    public WatchService newWatchService() {
      throw new UnsupportedOperationException("nothing that is tested watches folders");
    }
  }
}
