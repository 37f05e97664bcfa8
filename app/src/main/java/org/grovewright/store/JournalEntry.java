package org.grovewright.store;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import org.grovewright.quantity.Quantity;

/**
 * An entry of the journal as it is kept.
 *
 * @param content what it says
 * @param number grows with every change in a site's journal; what has a larger number than the last
 *     one seen is new
 * @param revision how often it was changed, from 1
 * @param author who wrote it
 * @param created when it first came in
 * @param changed when it last changed
 * @param deleted whether it was deleted; its content stays, so that it can be brought back
 * @param photo its photo, if it has one
 */
public record JournalEntry(
    Content content,
    long number,
    long revision,
    String author,
    Instant created,
    Instant changed,
    boolean deleted,
    Optional<Photo> photo) {
  /**
   * What is known of a photo.
   *
   * @param hash another one for every other picture
   * @param type the sort of picture
   * @param bytes its size
   */
  public record Photo(String hash, PhotoType type, long bytes) {}

  /** What an entry is about. */
  public enum SubjectKind {
    /** The whole site. */
    SITE,
    /** One plant. */
    PLANT,
    /** A row. */
    ROW,
    /** A watering zone. */
    ZONE
  }

  /**
   * What an entry says.
   *
   * @param id id made by the device it was written on, the same however often it is sent
   * @param day the day it tells of
   * @param kind what it tells of
   * @param subjectKind what sort of thing it is about
   * @param subject id of that thing, empty for the whole site
   * @param amount a number, if any
   * @param note words, may be empty
   */
  public record Content(
      String id,
      LocalDate day,
      JournalKind kind,
      SubjectKind subjectKind,
      String subject,
      Optional<Quantity> amount,
      String note) {}
}
