package org.grovewright.web.api;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.grovewright.quantity.FigureBook;
import org.grovewright.sheets.ReaderUnits;
import org.grovewright.store.JournalEntry;
import org.grovewright.store.JournalEntry.Content;
import org.grovewright.store.JournalEntry.Photo;
import org.grovewright.store.Photos;
import org.grovewright.store.Store;

/** A site's journal to take away: the entries as a table, and their photos as files. */
final class JournalZip {
  static final String FILE_NAME = "journal.zip";

  private static final CSVFormat FORMAT =
      CSVFormat.DEFAULT.builder().setRecordSeparator("\n").get();

  private final Store store;
  private final String siteId;
  private final ReaderUnits units;

  JournalZip(Store store, String siteId, ReaderUnits units) {
    this.store = store;
    this.siteId = siteId;
    this.units = units;
  }

  /** Writes the file. */
  void write(OutputStream out) {
    List<JournalEntry> entries = store.journal().list(siteId);
    try (ZipOutputStream zip = new ZipOutputStream(out)) {
      entry(zip, "journal.csv", Instant.EPOCH, table(entries).getBytes(StandardCharsets.UTF_8));
      for (JournalEntry entry : entries) {
        // One after another, for together they may be larger than the memory.
        Optional<Photos.Kept> photo =
            entry.photo().isEmpty()
                ? Optional.empty()
                : store.photos().find(siteId, entry.content().id());
        if (photo.isPresent()) {
          entry(zip, name(entry, photo.get().about()), entry.changed(), photo.get().content());
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void entry(ZipOutputStream zip, String name, Instant changed, byte[] content)
      throws IOException {
    ZipEntry entry = new ZipEntry(name);
    // By the clock of the world, so that the same journal gives the same bytes everywhere.
    entry.setTimeLocal(changed.atOffset(ZoneOffset.UTC).toLocalDateTime());
    zip.putNextEntry(entry);
    zip.write(content);
    zip.closeEntry();
  }

  private static String name(JournalEntry entry, Photo photo) {
    Content content = entry.content();
    String about = content.subject().isEmpty() ? "site" : FigureBook.slug(content.subject());
    return "photos/"
        + content.day()
        + "-"
        + about
        + "-"
        + content.id()
        + "."
        + photo.type().ending();
  }

  private String table(List<JournalEntry> entries) throws IOException {
    StringBuilder text = new StringBuilder();
    try (CSVPrinter csv = new CSVPrinter(text, FORMAT)) {
      csv.printRecord(
          "id", "day", "kind", "about", "name", "amount", "note", "author", "changed", "photo");
      for (JournalEntry entry : entries) {
        Content content = entry.content();
        csv.printRecord(
            content.id(),
            content.day(),
            Json.word(content.kind()),
            Json.word(content.subjectKind()),
            asText(content.subject()),
            content.amount().map(amount -> ReaderUnits.plainSpaces(units.text(amount))).orElse(""),
            asText(content.note()),
            asText(entry.author()),
            entry.changed(),
            entry.photo().map(photo -> name(entry, photo)).orElse(""));
      }
    }
    return text.toString();
  }

  /** A helper's words, of which no spreadsheet is to make a formula. */
  private static String asText(String words) {
    return !words.isEmpty() && "=+-@\t\r".indexOf(words.charAt(0)) >= 0 ? "'" + words : words;
  }
}
