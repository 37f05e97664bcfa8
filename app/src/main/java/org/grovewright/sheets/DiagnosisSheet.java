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

/** Writes what readings say of a watering system. */
public final class DiagnosisSheet {
  /** Bounds this near to those of the belief mean that nothing was learnt. */
  private static final double UNLEARNT = 0.85;

  private static final double NORMAL_95 = 1.959964;
  private static final int SHOWN = 5;

  private final Diagnosis diagnosis;
  private final ReaderUnits units;

  /** A sheet in a reader's units. */
  public DiagnosisSheet(Diagnosis diagnosis, ReaderUnits units) {
    this.diagnosis = diagnosis;
    this.units = units;
  }

  /** The result in sentences. */
  public String text() {
    StringBuilder text = new StringBuilder();
    text.append(Words.count(diagnosis.readings(), "reading", "readings"))
        .append(" set beside the plan.\n\n");
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
      text.append(advice());
    }
    return ReaderUnits.plainSpaces(text.toString());
  }

  private boolean closeCall() {
    return diagnosis.likeliest().size() > 1
        && diagnosis.likeliest().get(0).gain() - diagnosis.likeliest().get(1).gain() < 4;
  }

  private String advice() {
    return switch (diagnosis.likeliest().get(0).suspicion().kind()) {
      case LEAK ->
          "To narrow it down, fold the tubing shut behind every second plant in turn, read the meter"
              + " each time, and add the readings with the plant in the column folded.\n";
      case BLOCKAGE, CLOGGING ->
          "To narrow it down, hold a can under one emitter of each plant near these places and add"
              + " the readings.\n";
    };
  }

  private boolean learnt(Parameter parameter, Estimate estimate) {
    double half = Math.log(estimate.high() / estimate.factor());
    return half < UNLEARNT * NORMAL_95 * diagnosis.beliefs().get(parameter);
  }

  private String sentence(Parameter parameter, Estimate e) {
    if (!learnt(parameter, e)) {
      return switch (parameter) {
        case ROUGHNESS ->
            "Pipes: these readings say hardly anything of their roughness; read a gauge at the start"
                + " and the end of the longest row.\n";
        case SUPPLY ->
            "Supply: these readings say hardly anything of how it falls off; read the meter and a"
                + " gauge at the tap while a zone runs.\n";
        case EMITTERS ->
            "Emitters: these readings say hardly anything of their wear; hold a can under some of"
                + " them.\n";
      };
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
              "Emitters: they give %.0f %% of what the plan has, surely between %.0f and %.0f %%.\n",
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
      json.writeNumberField("readings", diagnosis.readings());
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
      json.writeEndObject();
    } catch (IOException e) {
      throw new UncheckedIOException("writing to memory cannot fail", e);
    }
    return text.append('\n').toString().replace(System.lineSeparator(), "\n");
  }
}
