package org.grovewright.sheets;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.UUID;

/**
 * Puts the sheets of a plan into a folder: all of them or none.
 *
 * <p>The sheets are written to a new folder beside the target first. Only when that is complete
 * does it take the target's place, so a reader never meets a half-written plan. A folder that holds
 * anything but sheets of an earlier plan is left alone unless told otherwise, and even then only
 * the sheets in it are replaced.
 */
public final class OutputFolder {
  private final Path target;
  private final boolean force;

  /**
   * A folder to write to.
   *
   * @param target the folder; made where it does not exist, together with the folders above it
   * @param force whether sheets may be put among files that are not ours
   */
  public OutputFolder(Path target, boolean force) {
    this.target = target.toAbsolutePath().normalize();
    this.force = force;
  }

  /**
   * Writes the sheets.
   *
   * @param sheets text by file name
   * @throws RefusedException if the target is not a folder we may write to
   * @throws IOException if the disk fails; the target is then as it was
   */
  public void write(Map<String, String> sheets) throws IOException, RefusedException {
    List<String> foreign = check(sheets);
    Path parent = target.getParent();
    if (parent == null) {
      throw new RefusedException("The top of the disk cannot be the output folder; name a folder.");
    }
    Files.createDirectories(parent);
    // Not a temporary folder of the system's making: those are closed to everyone but their owner.
    Path draft = Files.createDirectory(parent.resolve(".grovewright-" + UUID.randomUUID()));
    try {
      for (Map.Entry<String, String> sheet : sheets.entrySet()) {
        Files.writeString(draft.resolve(sheet.getKey()), sheet.getValue(), StandardCharsets.UTF_8);
      }
      if (foreign.isEmpty()) {
        swap(draft, parent);
      } else {
        replaceEach(draft, sheets);
      }
    } finally {
      delete(draft);
    }
  }

  /**
   * Checks, before any work is spent on a plan, that it could be written.
   *
   * @param sheets the sheets to come, by file name
   * @return names in the target that are not ours
   * @throws RefusedException if the target is not a folder we may write to
   */
  public List<String> check(Map<String, ?> sheets) throws IOException, RefusedException {
    if (!Files.exists(target, LinkOption.NOFOLLOW_LINKS)) {
      return List.of();
    }
    if (!Files.isDirectory(target)) {
      throw new RefusedException(
          "The output folder " + target + " is a file. Give the name of a folder with --out.");
    }
    List<String> foreign = new ArrayList<>();
    boolean link = Files.isSymbolicLink(target);
    try (DirectoryStream<Path> entries = Files.newDirectoryStream(target)) {
      for (Path entry : entries) {
        String name = entry.getFileName().toString();
        if (!sheets.containsKey(name) || !Files.isRegularFile(entry, LinkOption.NOFOLLOW_LINKS)) {
          foreign.add(name);
        }
      }
    }
    if (!foreign.isEmpty() && !force) {
      String first = new TreeSet<>(foreign).first();
      throw new RefusedException(
          "The output folder "
              + target
              + " holds files that are not part of a plan, such as "
              + first
              + ". Give another folder with --out, or add --force to put the plan among them.");
    }
    // A link must stay a link, so what it leads to is filled file by file.
    return foreign.isEmpty() && link ? List.of(target.getFileName().toString()) : foreign;
  }

  private void swap(Path draft, Path parent) throws IOException {
    Path old = null;
    try {
      if (Files.exists(target, LinkOption.NOFOLLOW_LINKS)) {
        old = Files.createTempDirectory(parent, ".grovewright-old-").resolve("plan");
        Files.move(target, old);
      }
      try {
        Files.move(draft, target);
      } catch (IOException e) {
        if (old != null) {
          Files.move(old, target);
        }
        throw e;
      }
    } finally {
      if (old != null) {
        delete(old.getParent());
      }
    }
  }

  private void replaceEach(Path draft, Map<String, String> sheets) throws IOException {
    for (String name : sheets.keySet()) {
      Path from = draft.resolve(name);
      Path to = target.resolve(name);
      try {
        Files.move(from, to, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
      } catch (AtomicMoveNotSupportedException e) {
        Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
      }
    }
  }

  private static void delete(Path folder) throws IOException {
    if (!Files.exists(folder, LinkOption.NOFOLLOW_LINKS)) {
      return;
    }
    if (Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS)) {
      List<Path> entries = new ArrayList<>();
      try (DirectoryStream<Path> stream = Files.newDirectoryStream(folder)) {
        stream.forEach(entries::add);
      }
      for (Path entry : entries) {
        delete(entry);
      }
    }
    Files.delete(folder);
  }

  /** The target is not a folder we may write to; the message tells the owner why. */
  public static final class RefusedException extends Exception {
    private static final long serialVersionUID = 1L;

    RefusedException(String message) {
      super(message);
    }
  }
}
