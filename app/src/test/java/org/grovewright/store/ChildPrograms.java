package org.grovewright.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.spi.ToolProvider;

/**
 * Starts test programs of our own in a Java of their own, many times over. The first one to end by
 * itself leaves an archive of its classes, so that the next ones start in a third of the time; for
 * that the class path must be of jars only.
 */
final class ChildPrograms {
  private final Path folder;
  private final String classPath;

  private ChildPrograms(Path folder, String classPath) {
    this.folder = folder;
    this.classPath = classPath;
  }

  /** Programs that keep their archive in a folder. */
  static ChildPrograms in(Path folder) {
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
    return new ChildPrograms(folder, String.join(File.pathSeparator, jars));
  }

  /** Starts a program. */
  Process start(Class<?> program, String... arguments) throws IOException {
    Path archive = folder.resolve("classes.jsa");
    List<String> command = new ArrayList<>();
    command.addAll(
        List.of(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            Files.exists(archive)
                ? "-XX:SharedArchiveFile=" + archive
                : "-XX:ArchiveClassesAtExit=" + archive,
            "-XX:TieredStopAtLevel=1",
            "-XX:+UseSerialGC",
            "-Xshare:auto",
            "-Xmx128m",
            "-Dorg.sqlite.tmpdir=" + folder,
            "-cp",
            classPath,
            program.getName()));
    command.addAll(List.of(arguments));
    return new ProcessBuilder(command).redirectError(folder.resolve("errors").toFile()).start();
  }
}
