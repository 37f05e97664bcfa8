package org.grovewright.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.lang.ProcessBuilder.Redirect;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.spi.ToolProvider;
import java.util.stream.Stream;
import org.sqlite.util.LibraryLoaderUtil;

/**
 * Starts a test program of our own in a Java of its own, many times over and from several threads.
 * It runs twice beforehand, to its end: once to see which jars it needs, and once to leave an
 * archive of its classes. With both, and with the native part of SQLite unpacked once instead of at
 * every start, the next ones start in a quarter of the time.
 */
final class ChildPrograms {
  private final Path folder;
  private final String program;
  private final Path archive;
  private final String classPath;

  /**
   * Prepares a program.
   *
   * @param folder where it is prepared
   * @param program the program
   * @param arguments with which it comes to its end by itself
   */
  ChildPrograms(Path folder, Class<?> program, String... arguments) throws Exception {
    this.folder = folder;
    this.program = program.getName();
    archive = folder.resolve("classes.jsa");
    try (InputStream in =
        getClass()
            .getResourceAsStream(
                LibraryLoaderUtil.getNativeLibResourcePath()
                    + "/"
                    + LibraryLoaderUtil.getNativeLibName())) {
      Files.copy(in, folder.resolve(LibraryLoaderUtil.getNativeLibName()));
    }
    List<String> all = jars();
    Path loaded = folder.resolve("loaded");
    run(String.join(File.pathSeparator, all), "-Xlog:class+load:file=" + loaded, arguments);
    String names = Files.readString(loaded);
    classPath =
        String.join(
            File.pathSeparator,
            all.stream().filter(jar -> names.contains(Path.of(jar).toUri().getPath())).toList());
    run(classPath, "-XX:ArchiveClassesAtExit=" + archive, arguments);
    assertThat(archive).exists();
  }

  /** The class path, all of it as jars, for no archive is made of classes in folders. */
  private List<String> jars() {
    List<String> jars = new ArrayList<>();
    for (String entry : System.getProperty("java.class.path").split(File.pathSeparator)) {
      if (Files.isDirectory(Path.of(entry))) {
        String jar = folder.resolve("classes-" + jars.size() + ".jar").toString();
        int code =
            ToolProvider.findFirst("jar")
                .orElseThrow()
                .run(System.out, System.err, "--create", "--file", jar, "-C", entry, ".");
        assertThat(code).isZero();
        jars.add(jar);
      } else {
        jars.add(entry);
      }
    }
    return jars;
  }

  private void run(String classes, String option, String... arguments) throws Exception {
    Process process = start(classes, option, arguments);
    process.getInputStream().readAllBytes();
    assertThat(process.waitFor()).isZero();
  }

  /** Starts the program. */
  Process start(String... arguments) throws IOException {
    return start(classPath, "-XX:SharedArchiveFile=" + archive, arguments);
  }

  private Process start(String classes, String option, String... arguments) throws IOException {
    List<String> command = new ArrayList<>();
    command.addAll(
        List.of(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            option,
            "-XX:TieredStopAtLevel=1",
            "-XX:+UseSerialGC",
            "-Xshare:auto",
            "-Xmx128m",
            "-Dorg.sqlite.lib.path=" + folder,
            "-Dorg.sqlite.lib.name=" + LibraryLoaderUtil.getNativeLibName(),
            "-cp",
            classes,
            program));
    Stream.of(arguments).forEach(command::add);
    return new ProcessBuilder(command)
        .redirectError(Redirect.appendTo(folder.resolve("errors").toFile()))
        .start();
  }
}
