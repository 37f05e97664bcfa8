package org.grovewright.web.views;

import java.util.List;
import java.util.regex.Pattern;
import org.grovewright.finding.Finding;
import org.grovewright.model.Preferences.Units;
import org.grovewright.plan.Plan;
import org.grovewright.quantity.Figure;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Quantity;
import org.grovewright.sheets.ReaderUnits;
import org.grovewright.sheets.Words;
import org.grovewright.texts.Language;

/**
 * How a page speaks to its reader.
 *
 * @param language the reader's language
 * @param units the reader's units, in that language
 */
public record Voice(Language language, ReaderUnits units) {
  private static final Pattern ZONE = Pattern.compile("^[Zz]one[-_ ]?(?=.)");

  /**
   * The voice of a reader.
   *
   * @param language tag of the language; English where there is no such language
   * @param units system of units
   * @param currency ISO 4217 code of the plan's money
   */
  public static Voice of(String language, Units units, String currency) {
    Language found = Language.of(language);
    return new Voice(found, new ReaderUnits(units, currency, found));
  }

  /** What the engine or the catalogue says, in the reader's language. */
  String say(String english) {
    return language.say(english);
  }

  /** A sentence of the engine with its quantities. */
  String say(String english, List<Quantity> quantities) {
    return Words.message(language.say(english), quantities, units);
  }

  /** A text of the screens. */
  String text(String key, Object... arguments) {
    return language.text(key, arguments);
  }

  /** A finding of a plan as a remark. */
  Remark remark(Plan plan, Finding finding) {
    return new Remark(
        finding.code(),
        finding.severity() == Finding.Severity.SHORTFALL,
        subject(plan, finding.subject()),
        say(finding.message(), finding.quantities()));
  }

  /** What a remark or a job is about: species, goods and zones by name, other ids as they are. */
  String subject(Plan plan, String id) {
    return Words.subject(plan, id, language);
  }

  /** What a zone is called. */
  String zone(String id) {
    return text("zone", ZONE.matcher(id).replaceFirst(""));
  }

  /** A value that rests on a figure; plain where the plan has no such figure. */
  Shown shown(Plan plan, String figureId, double value, Kind kind) {
    return shown(plan, figureId, units.text(value, kind));
  }

  /** A text that rests on a figure; plain where the plan has no such figure. */
  Shown shown(Plan plan, String figureId, String text) {
    return new Shown(text, plan.figures().containsKey(figureId) ? figureId : "");
  }

  /** A figure's own value; nothing where the plan has no such figure. */
  Shown figure(Plan plan, String id) {
    Figure figure = plan.figures().get(id);
    return figure == null ? Shown.NONE : new Shown(units.text(figure), id);
  }
}
