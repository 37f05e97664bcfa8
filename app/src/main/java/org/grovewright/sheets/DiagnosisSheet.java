package org.grovewright.sheets;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.Locale;
import java.util.Map;
import org.grovewright.hydraulics.Calibration.Estimate;
import org.grovewright.hydraulics.Calibration.Parameter;
import org.grovewright.hydraulics.FaultSearch.Finding;
import org.grovewright.hydraulics.FaultSearch.Kind;
import org.grovewright.trouble.Diagnosis;
import org.grovewright.trouble.FieldReading;

/** Writes what readings say of a watering system. */
public final class DiagnosisSheet {
  /** Bounds this near to those of the belief mean that nothing was learnt. */
  private static final double UNLEARNT = 0.85;

  private static final double NORMAL_95 = 1.959964;
  private static final int SHOWN = 5;

  private static final String NO_ADVICE =
      "No further reading would tell these places apart; look at each of them.\n";

  private final Diagnosis diagnosis;
  private final int year;
  private final ReaderUnits units;

  /** A sheet in a reader's units of what was read in a year of the plan. */
  public DiagnosisSheet(Diagnosis diagnosis, int year, ReaderUnits units) {
    this.diagnosis = diagnosis;
    this.year = year;
    this.units = units;
  }

  /** The result in sentences. */
  public String text() {
    StringBuilder text = new StringBuilder();
    text.append(Words.count(diagnosis.readings().size(), "reading", "readings"))
        .append(" set beside the plan. The emitters are those of its year ")
        .append(year)
        .append(".\n\n");
    diagnosis.estimates().forEach((parameter, e) -> text.append(sentence(parameter, e)));
    text.append('\n');
    if (diagnosis.pointsToFault()) {
      text.append("Something is wrong. Look in these places first:\n");
    } else {
      text.append(
          "Nothing points to a leak, a blockage or a clogged plant: wear and the inexactness of the"
              + " readings explain them. If something is wrong all the same, these places are the"
              + " least unlikely:\n");
    }
    int number = 0;
    for (Finding finding : diagnosis.likeliest()) {
      if (number == SHOWN || !diagnosis.pointsToFault() && number == 3) {
        break;
      }
      number++;
      text.append(String.format(Locale.ROOT, "%2d. ", number))
          .append(Words.capital(finding.suspicion().element()))
          .append(": ")
          .append(what(finding))
          .append(String.format(Locale.ROOT, " (odds index %.1f)", finding.gain()))
          .append('\n');
    }
    text.append(
        "\nThe odds index says how much better the place explains all readings than no fault does;"
            + " places within 4 of each other can hardly be told apart.\n");
    if (diagnosis.pointsToFault() && closeCall()) {
      text.append(diagnosis.next().map(DiagnosisSheet::advice).orElse(NO_ADVICE));
    }
    return ReaderUnits.plainSpaces(text.toString());
  }

  private boolean closeCall() {
    return diagnosis.likeliest().size() > 1
        && diagnosis.likeliest().get(0).gain() - diagnosis.likeliest().get(1).gain() < 4;
  }

  /** What to read next, which was not read yet. */
  private static String advice(FieldReading next) {
    String zone = Words.zone(next.zoneId());
    String what =
        switch (next.kind()) {
          case CATCH ->
              "hold a can under an emitter of " + next.place() + " while " + zone + " runs";
          case PRESSURE -> "put a gauge at " + next.place() + " while " + zone + " runs";
          case METER ->
              next.folded().isEmpty()
                  ? "read the meter while " + zone + " runs"
                  : "fold the tubing shut "
                      + (next.folded().get(0).endsWith(" start") ? "at " : "behind ")
                      + String.join(" and ", next.folded())
                      + " and read the meter while "
                      + zone
                      + " runs, with "
                      + String.join(";", next.folded())
                      + " in the column folded";
        };
    return "To narrow it down, " + what + ", and add the reading to the table.\n";
  }

  private boolean has(FieldReading.Kind kind) {
    return diagnosis.readings().stream().anyMatch(reading -> reading.kind() == kind);
  }

  private long gauges(boolean atTap) {
    return diagnosis.readings().stream()
        .filter(reading -> reading.kind() == FieldReading.Kind.PRESSURE)
        .map(reading -> reading.place().toLowerCase(Locale.ROOT))
        .filter(place -> atTap == (place.equals("tap") || place.equals("supply")))
        .distinct()
        .count();
  }

  /** Which reading is missing to learn of something. */
  private String missing(Parameter parameter) {
    return switch (parameter) {
      case ROUGHNESS ->
          switch ((int) Math.min(2, gauges(false))) {
            case 0 -> "read a gauge at the start and the end of the longest row";
            case 1 -> "read a gauge at one more place, the other end of the longest row";
            default -> "read the gauges again while more water runs, for so little is lost now";
          };
      case SUPPLY ->
          has(FieldReading.Kind.METER) && gauges(true) > 0
              ? "read the meter and the gauge at the tap again while more water runs"
              : "read "
                  + (has(FieldReading.Kind.METER) ? "" : "the meter")
                  + (has(FieldReading.Kind.METER) || gauges(true) > 0 ? "" : " and ")
                  + (gauges(true) > 0 ? "" : "a gauge at the tap")
                  + " while a zone runs";
      case EMITTERS ->
          has(FieldReading.Kind.CATCH)
              ? "hold a can under more of them"
              : "hold a can under some of them";
    };
  }

  private boolean learnt(Parameter parameter, Estimate estimate) {
    double half = Math.log(estimate.high() / estimate.factor());
    return half < UNLEARNT * NORMAL_95 * diagnosis.beliefs().get(parameter);
  }

  private String sentence(Parameter parameter, Estimate e) {
    if (!learnt(parameter, e)) {
      String subject =
          switch (parameter) {
            case ROUGHNESS -> "Pipes: these readings say hardly anything of their roughness; ";
            case SUPPLY -> "Supply: these readings say hardly anything of how it falls off; ";
            case EMITTERS -> "Emitters: these readings say hardly anything of their wear; ";
          };
      return subject + missing(parameter) + ".\n";
    }
    String range =
        String.format(
            Locale.ROOT, "%.2f (surely between %.2f and %.2f)", e.factor(), e.low(), e.high());
    return switch (parameter) {
      case ROUGHNESS -> "Pipes: the roughness figure of the plan times " + range + ".\n";
      case SUPPLY ->
          "Supply: it loses the pressure that the plan has it lose, times " + range + ".\n";
      case EMITTERS ->
          String.format(
              Locale.ROOT,
              "Emitters: they give %.0f %% of what the plan has, surely between %.0f and %.0f"
                  + " %%.\n",
              100 * e.factor(),
              100 * e.low(),
              100 * e.high());
    };
  }

  private String what(Finding finding) {
    return switch (finding.suspicion().kind()) {
      case LEAK ->
          "a leak as of a round hole of "
              + units.text(finding.size(), org.grovewright.quantity.Kind.BORE);
      case BLOCKAGE ->
          String.format(
              Locale.ROOT, "a blockage that leaves %.1f %% of the bore", 100 * finding.size());
      case CLOGGING ->
          String.format(Locale.ROOT, "clogged, giving %.0f %% of their flow", 100 * finding.size());
    };
  }

  /** The result as data: factors as shares, sizes of leaks in metres. */
  public String json() {
    StringWriter text = new StringWriter();
    try (JsonGenerator json = new JsonFactory().createGenerator(text)) {
      json.useDefaultPrettyPrinter();
      json.writeStartObject();
      json.writeNumberField("readings", diagnosis.readings().size());
      json.writeNumberField("year", year);
      json.writeNumberField("misfit", diagnosis.misfit());
      json.writeObjectFieldStart("factors");
      for (Map.Entry<Parameter, Estimate> entry : diagnosis.estimates().entrySet()) {
        json.writeObjectFieldStart(entry.getKey().name().toLowerCase(Locale.ROOT));
        json.writeNumberField("factor", entry.getValue().factor());
        json.writeNumberField("low", entry.getValue().low());
        json.writeNumberField("high", entry.getValue().high());
        json.writeBooleanField("learnt", learnt(entry.getKey(), entry.getValue()));
        json.writeEndObject();
      }
      json.writeEndObject();
      json.writeBooleanField("points_to_fault", diagnosis.pointsToFault());
      json.writeArrayFieldStart("likeliest");
      for (Finding finding : diagnosis.likeliest()) {
        Kind kind = finding.suspicion().kind();
        json.writeStartObject();
        json.writeStringField("place", finding.suspicion().element());
        json.writeStringField("kind", kind.name().toLowerCase(Locale.ROOT));
        json.writeNumberField("size", finding.size());
        json.writeNumberField("gain", finding.gain());
        json.writeEndObject();
      }
      json.writeEndArray();
      if (diagnosis.next().isPresent()) {
        FieldReading next = diagnosis.next().get();
        json.writeObjectFieldStart("next");
        json.writeStringField("zone", next.zoneId());
        json.writeStringField("kind", next.kind().name().toLowerCase(Locale.ROOT));
        json.writeStringField("place", next.place());
        json.writeStringField("folded", String.join(";", next.folded()));
        json.writeEndObject();
      }
      json.writeEndObject();
    } catch (IOException e) {
      throw new UncheckedIOException("writing to memory cannot fail", e);
    }
    return text.append('\n').toString().replace(System.lineSeparator(), "\n");
  }
}
