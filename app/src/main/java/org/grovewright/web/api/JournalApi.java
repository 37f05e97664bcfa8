package org.grovewright.web.api;

import com.fasterxml.jackson.databind.JsonNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.grovewright.formats.units.Measure;
import org.grovewright.formats.units.NotAQuantityException;
import org.grovewright.formats.units.QuantityText;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Quantity;
import org.grovewright.sheets.ReaderUnits;
import org.grovewright.store.Journal;
import org.grovewright.store.JournalEntry;
import org.grovewright.store.JournalEntry.Content;
import org.grovewright.store.JournalEntry.Photo;
import org.grovewright.store.JournalEntry.SubjectKind;
import org.grovewright.store.JournalKind;
import org.grovewright.texts.Sentence;

/** The journal: what was done and seen, also from devices that had no connection. */
final class JournalApi {
  private static final int MOST_CHANGES = 500;
  private static final int LONGEST_NOTE = 4000;
  private static final Pattern NUMBER = Pattern.compile("[0-9]{1,18}");
  private static final Pattern ID = Pattern.compile("[A-Za-z0-9-]{8,64}");

  private final Desk desk;

  JournalApi(Desk desk) {
    this.desk = desk;
  }

  void addTo(RoutesConfig routes) {
    routes.get("/api/sites/{id}/journal", this::list, Access.VIEWER);
    routes.get("/api/sites/{id}/journal/sync", this::since, Access.VIEWER);
    routes.post("/api/sites/{id}/journal/sync", this::sync, Access.HELPER);
    routes.get("/api/journal/kinds", this::kinds, Access.SIGNED_IN);
  }

  private record AmountView(double value, String kind, String text) {}

  /** Where an entry's photo is; the path is another one for every other picture. */
  record PhotoView(String path, String type, long bytes) {
    static PhotoView of(String siteId, String entryId, Photo photo) {
      return new PhotoView(
          "/api/sites/" + siteId + "/journal/" + entryId + "/photo?is=" + photo.hash(),
          photo.type().mediaType(),
          photo.bytes());
    }
  }

  private record EntryView(
      String id,
      String day,
      String kind,
      String subjectKind,
      String subject,
      AmountView amount,
      String note,
      long revision,
      String author,
      String created,
      String changed,
      boolean deleted,
      PhotoView photo) {
    static EntryView of(String siteId, JournalEntry entry, ReaderUnits units) {
      Content content = entry.content();
      return new EntryView(
          content.id(),
          content.day().toString(),
          Json.word(content.kind()),
          Json.word(content.subjectKind()),
          content.subject(),
          content
              .amount()
              .map(
                  amount ->
                      new AmountView(
                          amount.value(),
                          Json.word(amount.kind()),
                          ReaderUnits.plainSpaces(units.text(amount))))
              .orElse(null),
          content.note(),
          entry.revision(),
          entry.author(),
          entry.created().toString(),
          entry.changed().toString(),
          entry.deleted(),
          entry.photo().map(photo -> PhotoView.of(siteId, content.id(), photo)).orElse(null));
    }
  }

  private void list(Context context) {
    String site = context.pathParam("id");
    ReaderUnits units = desk.voice(context).units();
    Json.send(
        context,
        desk.store().journal().list(site).stream()
            .map(entry -> EntryView.of(site, entry, units))
            .toList());
  }

  private void kinds(Context context) {
    Map<String, Object> kinds = new LinkedHashMap<>();
    for (JournalKind kind : JournalKind.values()) {
      Map<String, Object> view = new LinkedHashMap<>();
      view.put("amounts", kind.amounts().stream().map(Json::word).toList());
      view.put("needsAmount", kind.needsAmount());
      kinds.put(Json.word(kind), view);
    }
    Json.send(context, kinds);
  }

  private void sync(Context context) {
    JsonNode body = Json.body(context);
    long since = body.has("since") ? Json.whole(body, "since") : 0;
    JsonNode list = body.path("changes");
    if (list.size() > MOST_CHANGES) {
      throw ApiException.field("changes", "Send at most {0} changes at a time.", MOST_CHANGES);
    }
    List<Journal.Change> changes = new ArrayList<>();
    for (int i = 0; i < list.size(); i++) {
      changes.add(change(list.get(i), "changes[" + i + "]."));
    }
    String site = context.pathParam("id");
    send(
        context,
        site,
        desk.store().journal().sync(site, changes, since, Caller.from(context).author()));
  }

  /** What is new, for those who have nothing to send or may not. */
  private void since(Context context) {
    String text = Optional.ofNullable(context.queryParam("since")).orElse("0");
    if (!NUMBER.matcher(text).matches()) {
      throw ApiException.field("since", "'since' must be a whole number from 0.");
    }
    String site = context.pathParam("id");
    send(context, site, desk.store().journal().since(site, Long.parseLong(text)));
  }

  private void send(Context context, String site, Journal.Synced synced) {
    ReaderUnits units = desk.voice(context).units();
    Map<String, Object> answer = new LinkedHashMap<>();
    answer.put(
        "entries", synced.entries().stream().map(e -> EntryView.of(site, e, units)).toList());
    answer.put(
        "conflicts", synced.conflicts().stream().map(e -> EntryView.of(site, e, units)).toList());
    answer.put("upTo", synced.upTo());
    Json.send(context, answer);
  }

  private static Journal.Change change(JsonNode one, String at) {
    String id = Json.text(one, "id");
    if (!ID.matcher(id).matches()) {
      throw ApiException.field(at + "id", "An entry's id is 8 to 64 letters, digits and hyphens.");
    }
    JournalKind kind = choice(JournalKind.class, Json.text(one, "kind"), at + "kind");
    SubjectKind about =
        choice(
            SubjectKind.class,
            Json.optionalText(one, "subjectKind").orElse("site"),
            at + "subjectKind");
    String note = Json.optionalText(one, "note").orElse("");
    if (note.length() > LONGEST_NOTE) {
      throw ApiException.field(at + "note", "A note has at most {0} letters.", LONGEST_NOTE);
    }
    Optional<Quantity> amount = amount(one.path("amount"), kind, at + "amount");
    if (amount.isEmpty() && kind.needsAmount()) {
      throw ApiException.field(at + "amount", "Say how much: give a number with its unit.");
    }
    Content content =
        new Content(
            id,
            day(Json.text(one, "day"), at),
            kind,
            about,
            Json.optionalText(one, "subject").orElse(""),
            amount,
            note);
    long base = one.has("baseRevision") ? Json.whole(one, "baseRevision") : 0;
    return new Journal.Change(content, base, one.path("deleted").asBoolean(false));
  }

  private static LocalDate day(String text, String at) {
    try {
      return LocalDate.parse(text);
    } catch (DateTimeParseException e) {
      throw ApiException.field(at + "day", "The day must be written as 2027-03-01.");
    }
  }

  private static <E extends Enum<E>> E choice(Class<E> type, String word, String field) {
    for (E value : type.getEnumConstants()) {
      if (Json.word(value).equals(word)) {
        return value;
      }
    }
    throw ApiException.field(field, "'{0}' is not known here.", word);
  }

  /** An amount as a text with its unit, or as {@code {value, kind}} in the SI unit of the kind. */
  private static Optional<Quantity> amount(JsonNode node, JournalKind kind, String field) {
    if (node.isMissingNode() || node.isNull()) {
      return Optional.empty();
    }
    if (kind.amounts().isEmpty()) {
      throw ApiException.field(field, "An entry of this kind carries no amount.");
    }
    if (node.isObject()) {
      Kind of = choice(Kind.class, Json.text(node, "kind"), field + ".kind");
      if (!kind.amounts().contains(of)) {
        throw ApiException.field(field, "An entry of this kind carries another sort of amount.");
      }
      return Optional.of(notNegative(new Quantity(Json.number(node, "value"), of), field));
    }
    String text = node.asText();
    Optional<Sentence> why = Optional.empty();
    for (Kind of : kind.amounts()) {
      try {
        return Optional.of(notNegative(new Quantity(read(text, of), of), field));
      } catch (NotAQuantityException e) {
        why = why.or(() -> Optional.of(e.sentence()));
      }
    }
    throw ApiException.field(field, why.orElseThrow().whole());
  }

  private static Quantity notNegative(Quantity quantity, String field) {
    if (quantity.value() < 0) {
      throw ApiException.field(field, "The amount must not be below 0.");
    }
    return quantity;
  }

  private static double read(String text, Kind kind) throws NotAQuantityException {
    if (kind == Kind.COUNT) {
      try {
        return Double.parseDouble(text.strip());
      } catch (NumberFormatException e) {
        throw new NotAQuantityException(
            "'{0}' is no number; give a count, such as 3", text.strip());
      }
    }
    Measure measure =
        switch (kind) {
          case WATER_VOLUME, BULK_VOLUME -> Measure.VOLUME;
          case RUN_TIME -> Measure.TIME;
          case WATER_DEPTH -> Measure.RAIN;
          case MASS -> Measure.MASS;
          case LENGTH -> Measure.LENGTH;
          default -> throw new IllegalStateException("the journal reads no " + kind);
        };
    return QuantityText.read(text, measure).value();
  }
}
