package org.grovewright.web.views;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.grovewright.plan.Plan;
import org.grovewright.quantity.Figure;
import org.grovewright.quantity.Input;
import org.grovewright.quantity.Kind;

/**
 * The working of a figure.
 *
 * @param id the figure's id
 * @param label what it is
 * @param value its value in the reader's units
 * @param si its value in the SI unit, in which the formula holds
 * @param formula how it was found
 * @param inputs what went in
 * @param source where the method comes from
 */
public record FigureView(
    String id,
    String label,
    String value,
    String si,
    String formula,
    List<InputView> inputs,
    String source) {
  /**
   * One input.
   *
   * @param label its symbol in the formula
   * @param value its value in the reader's units
   * @param si its value in the SI unit
   * @param origin where it comes from, in words
   * @param figure id of the figure it comes from, empty if it comes from none
   */
  public record InputView(String label, String value, String si, String origin, String figure) {}

  /** The working of a figure, if the plan has it. */
  public static Optional<FigureView> of(Plan plan, String id, Voice voice) {
    return of(plan, Map.of(), id, voice);
  }

  /**
   * The working of a figure of the plan or of what was found from it, if either has it.
   *
   * @param found figures beside those of the plan, by id
   */
  public static Optional<FigureView> of(
      Plan plan, Map<String, Figure> found, String id, Voice voice) {
    return find(plan, found, id).map(figure -> of(plan, found, figure, voice));
  }

  private static Optional<Figure> find(Plan plan, Map<String, Figure> found, String id) {
    return Optional.ofNullable(found.get(id)).or(() -> plan.figure(id));
  }

  private static FigureView of(Plan plan, Map<String, Figure> found, Figure figure, Voice voice) {
    List<InputView> inputs = new ArrayList<>();
    for (Input input : figure.working().inputs()) {
      Figure origin = find(plan, found, input.origin()).orElse(null);
      inputs.add(
          new InputView(
              voice.say(input.symbol()),
              voice.units().text(input.value(), input.kind()),
              si(input.value(), input.kind(), voice),
              voice.say(origin == null ? input.origin() : origin.label()),
              origin == null ? "" : origin.id()));
    }
    return new FigureView(
        figure.id(),
        voice.say(figure.label()),
        voice.units().text(figure),
        si(figure.value(), figure.kind(), voice),
        voice.say(figure.working().formula()),
        inputs,
        voice.say(figure.working().source()));
  }

  /** Money has no SI unit. */
  private static String si(double value, Kind kind, Voice voice) {
    return kind == Kind.MONEY ? voice.units().text(value, kind) : voice.units().si(value, kind);
  }
}
