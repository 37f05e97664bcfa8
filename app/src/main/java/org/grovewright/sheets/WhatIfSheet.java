package org.grovewright.sheets;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.grovewright.quantity.Kind;
import org.grovewright.trouble.Told;
import org.grovewright.trouble.WhatIfAnswer;
import org.grovewright.trouble.WhatIfAnswer.PlantChange;
import org.grovewright.trouble.WhatIfAnswer.ZoneChange;

/** Writes what would change for every plant, as a table for people or as data. */
public final class WhatIfSheet {
  private final List<String> names;
  private final List<WhatIfAnswer> answers;
  private final int year;
  private final ReaderUnits units;

  /**
   * A sheet of answers.
   *
   * @param names names of the cases as they were asked for
   * @param answers an answer for each
   * @param year year of the plan that they are about
   * @param units units of the reader
   */
  public WhatIfSheet(List<String> names, List<WhatIfAnswer> answers, int year, ReaderUnits units) {
    this.names = List.copyOf(names);
    this.answers = List.copyOf(answers);
    this.year = year;
    this.units = units;
  }

  /** The answers in sentences and tables. */
  public String text() {
    StringBuilder text = new StringBuilder();
    text.append("The grove is taken as it is in year ").append(year).append(" of the plan.\n");
    for (int i = 0; i < answers.size(); i++) {
      text.append('\n').append(names.get(i)).append('\n');
      append(answers.get(i), text);
    }
    return ReaderUnits.plainSpaces(text.toString());
  }

  private void append(WhatIfAnswer answer, StringBuilder text) {
    text.append(said(answer.title())).append('\n');
    for (ZoneChange zone : answer.zones()) {
      text.append(Words.capital(Words.zone(zone.zoneId())))
          .append(" draws ")
          .append(units.text(zone.after(), Kind.FLOW))
          .append(" instead of ")
          .append(units.text(zone.before(), Kind.FLOW))
          .append(" past the meter.\n");
    }
    PlantChange worst = answer.worst();
    if (worst != null) {
      text.append("Worst off is ")
          .append(worst.plantId())
          .append(": ")
          .append(units.text(worst.flowAfter(), Kind.EMITTER_FLOW))
          .append(worst.flowBefore() > 0 ? ", it had " : "")
          .append(worst.flowBefore() > 0 ? units.text(worst.flowBefore(), Kind.EMITTER_FLOW) : "")
          .append(". That is ")
          .append(units.text(worst.needAfter(), Kind.SHARE))
          .append(" of its need in the thirstiest month of that year.\n");
    }
    answer.remarks().forEach(remark -> text.append(said(remark)).append('\n'));
    if (!answer.plants().isEmpty()) {
      text.append(table(answer.plants()));
    }
  }

  private String table(List<PlantChange> plants) {
    List<List<String>> lines = new ArrayList<>();
    lines.add(List.of("Plant", "Zone", "Flow", "then", "Pressure", "then", "Of its need", "then"));
    for (PlantChange p : plants) {
      boolean isNew = p.flowBefore() == 0 && p.needBefore() == 0;
      lines.add(
          List.of(
              p.plantId(),
              p.zoneId(),
              isNew ? "new" : units.text(p.flowBefore(), Kind.EMITTER_FLOW),
              units.text(p.flowAfter(), Kind.EMITTER_FLOW),
              isNew ? "" : units.text(p.pressureBefore(), Kind.PRESSURE),
              units.text(p.pressureAfter(), Kind.PRESSURE),
              isNew ? "" : units.text(p.needBefore(), Kind.SHARE),
              units.text(p.needAfter(), Kind.SHARE)));
    }
    return columns(lines);
  }

  /** Lines of cells in columns, all but the first two set flush right. */
  private static String columns(List<List<String>> lines) {
    int count = lines.get(0).size();
    int[] widths = new int[count];
    for (List<String> line : lines) {
      for (int c = 0; c < count; c++) {
        widths[c] = Math.max(widths[c], line.get(c).length());
      }
    }
    StringBuilder text = new StringBuilder();
    for (List<String> line : lines) {
      StringBuilder row = new StringBuilder();
      for (int c = 0; c < count; c++) {
        String space = " ".repeat(widths[c] - line.get(c).length());
        row.append("  ").append(c < 2 ? line.get(c) + space : space + line.get(c));
      }
      text.append(row.toString().stripTrailing()).append('\n');
    }
    return text.toString();
  }

  /** One row for each case and plant, in the units that the headings name. */
  public String csv() {
    StringBuilder text = new StringBuilder();
    CSVFormat format = CSVFormat.DEFAULT.builder().setRecordSeparator("\n").get();
    try (CSVPrinter csv = new CSVPrinter(text, format)) {
      csv.printRecord(
          "case",
          "zone",
          "plant",
          "flow before L/h",
          "flow after L/h",
          "pressure before kPa",
          "pressure after kPa",
          "share of need before %",
          "share of need after %",
          "zone flow before L/min",
          "zone flow after L/min");
      for (int i = 0; i < answers.size(); i++) {
        WhatIfAnswer answer = answers.get(i);
        for (PlantChange p : answer.plants()) {
          ZoneChange zone =
              answer.zones().stream()
                  .filter(z -> z.zoneId().equals(p.zoneId()))
                  .findFirst()
                  .orElseThrow();
          csv.printRecord(
              names.get(i),
              p.zoneId(),
              p.plantId(),
              Decimals.plain(p.flowBefore() * 3.6e6, 4),
              Decimals.plain(p.flowAfter() * 3.6e6, 4),
              Decimals.plain(p.pressureBefore() / 1000, 3),
              Decimals.plain(p.pressureAfter() / 1000, 3),
              Decimals.plain(p.needBefore() * 100, 2),
              Decimals.plain(p.needAfter() * 100, 2),
              Decimals.plain(zone.before() * 60_000, 4),
              Decimals.plain(zone.after() * 60_000, 4));
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException("writing to memory cannot fail", e);
    }
    return text.toString();
  }

  private String said(Told told) {
    return ReaderUnits.plainSpaces(Words.message(told.message(), told.quantities(), units));
  }

  /** The answers as data: numbers in SI units, sentences in the reader's. */
  public String json() {
    StringWriter text = new StringWriter();
    try (JsonGenerator json = new JsonFactory().createGenerator(text)) {
      json.useDefaultPrettyPrinter();
      json.writeStartArray();
      for (int i = 0; i < answers.size(); i++) {
        write(names.get(i), answers.get(i), json);
      }
      json.writeEndArray();
    } catch (IOException e) {
      throw new UncheckedIOException("writing to memory cannot fail", e);
    }
    return text.append('\n').toString().replace(System.lineSeparator(), "\n");
  }

  private void write(String name, WhatIfAnswer answer, JsonGenerator json) throws IOException {
    json.writeStartObject();
    json.writeStringField("case", name);
    json.writeStringField("title", said(answer.title()));
    PlantChange worst = answer.worst();
    json.writeStringField("worst", worst == null ? "" : worst.plantId());
    json.writeArrayFieldStart("zones");
    for (ZoneChange zone : answer.zones()) {
      json.writeStartObject();
      json.writeStringField("zone", zone.zoneId());
      json.writeNumberField("flow_before", zone.before());
      json.writeNumberField("flow_after", zone.after());
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeArrayFieldStart("plants");
    for (PlantChange p : answer.plants()) {
      json.writeStartObject();
      json.writeStringField("plant", p.plantId());
      json.writeStringField("zone", p.zoneId());
      json.writeNumberField("flow_before", p.flowBefore());
      json.writeNumberField("flow_after", p.flowAfter());
      json.writeNumberField("pressure_before", p.pressureBefore());
      json.writeNumberField("pressure_after", p.pressureAfter());
      json.writeNumberField("share_of_need_before", p.needBefore());
      json.writeNumberField("share_of_need_after", p.needAfter());
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeArrayFieldStart("remarks");
    for (Told remark : answer.remarks()) {
      json.writeString(said(remark));
    }
    json.writeEndArray();
    json.writeEndObject();
  }
}
