package org.grovewright.irrigation;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.grovewright.finding.Finding;
import org.grovewright.finding.Finding.Severity;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Quantity;

/** Says in a sentence why a way to water costs what it does, or why it does not do. */
final class WayReasons {
  /** Money that is not worth a word. */
  private static final double SMALL_CHANGE = 0.5;

  private final Candidate cheapest;
  private final Costs costs;
  private final Rulebook rules;

  /**
   * Reasons beside the way that is best by rules kept and then by cost.
   *
   * @param cheapest the best way
   */
  WayReasons(Candidate cheapest, Costs costs, Rulebook rules) {
    this.cheapest = cheapest;
    this.costs = costs;
    this.rules = rules;
  }

  /** A sentence that is put together with its quantities. */
  private static final class Sentence {
    private final StringBuilder text = new StringBuilder();
    private final List<Quantity> quantities = new ArrayList<>();

    Sentence say(String words) {
      text.append(words);
      return this;
    }

    Sentence say(double value, Kind kind) {
      text.append('{').append(quantities.size()).append('}');
      quantities.add(new Quantity(value, kind));
      return this;
    }

    Finding finding(String code, Severity severity, String subject) {
      return new Finding(code, severity, subject, text.toString(), quantities);
    }
  }

  /** The reason of a way. */
  Finding of(Candidate way) {
    Sentence sentence = new Sentence();
    if (!way.keepsRules()) {
      breaks(way, sentence);
    } else if (way == cheapest) {
      sentence.say("It costs least of the ways that keep every rule.");
    } else {
      compare(way, sentence);
    }
    return sentence.finding("irrigation.way", Severity.NOTE, way.key());
  }

  /** The shortfall of a plan for which no way keeps every rule. */
  Finding noneFits(int tried) {
    Sentence sentence = new Sentence();
    sentence
        .say("None of ")
        .say(tried, Kind.COUNT)
        .say(
            " ways to build the watering keeps every rule. The one that comes nearest is planned. ");
    breaks(cheapest, sentence);
    return sentence.finding("irrigation.no-way-fits", Severity.SHORTFALL, "watering");
  }

  private void breaks(Candidate way, Sentence sentence) {
    String before = "";
    ZoneResult uneven =
        way.zones().stream()
            .filter(zone -> rules.evenness().shortness(zone) > 1e-9)
            .max(Comparator.comparingDouble(rules.evenness()::shortness))
            .orElse(null);
    if (uneven != null) {
      sentence
          .say("The emission uniformity of " + uneven.design().id() + " is ")
          .say(uneven.emissionUniformity(), Kind.SHARE)
          .say(", and ")
          .say(rules.evenness().of(uneven).good(), Kind.SHARE)
          .say(" counts as good.");
      before = " ";
    }
    for (ZoneResult zone : way.zones()) {
      if (zone.maxVelocityMPerS() > rules.maxVelocityMPerS() + 1e-9) {
        sentence
            .say(before + "Water in " + zone.design().id() + " runs at ")
            .say(zone.maxVelocityMPerS(), Kind.VELOCITY)
            .say(", faster than ")
            .say(rules.maxVelocityMPerS(), Kind.VELOCITY)
            .say(".");
        before = " ";
      }
      if (zone.pressureShort() > 1e-9) {
        sentence.say(
            before + "The pressure in " + zone.design().id() + " is not what its emitters need.");
        before = " ";
      }
    }
    if (way.tooManySorts()) {
      double less = cheapest.cost().total() - way.cost().total();
      double litres = cheapest.cost().wastedM3() - way.cost().wastedM3();
      sentence
          .say(before + "It takes ")
          .say(way.sorts(), Kind.COUNT)
          .say(" sorts of emitter where ")
          .say(cheapest.sorts(), Kind.COUNT)
          .say(" are planned. Over ")
          .say(costs.lifeYears(), Kind.COUNT)
          .say(" years it would cost ")
          .say(Math.abs(less), Kind.MONEY)
          .say(less < 0 ? " more and give " : " less and give ")
          .say(Math.abs(litres), Kind.WATER_VOLUME)
          .say(litres < 0 ? " more water in excess." : " less water in excess.");
      before = " ";
    }
    if (way.hoursShort() > 1e-9) {
      sentence
          .say(before + "At the peak it would run for ")
          .say(way.peakRunS(), Kind.RUN_TIME)
          .say(" a day, which is ")
          .say(way.hoursShort(), Kind.SHARE)
          .say(" more than the allowed days and hours or the daily limit of water leave.");
    }
  }

  private void compare(Candidate way, Sentence sentence) {
    double more = way.cost().total() - cheapest.cost().total();
    sentence.say("Over ").say(costs.lifeYears(), Kind.COUNT).say(" years it costs ");
    if (Math.abs(more) < SMALL_CHANGE) {
      sentence.say("about as much as the cheapest");
    } else {
      sentence.say(Math.abs(more), Kind.MONEY).say(more > 0 ? " more" : " less");
      sentence.say(" than the cheapest that keeps every rule");
    }
    LifeCost mine = way.cost();
    LifeCost least = cheapest.cost();
    List<Part> parts =
        List.of(
            new Part("pipe", mine.pipe() - least.pipe(), way.pipeM() - cheapest.pipeM()),
            new Part(
                "emitters, fittings and devices",
                mine.fittings() - least.fittings(),
                way.emitters() - cheapest.emitters()),
            new Part("work", mine.labour() - least.labour(), mine.workS() - least.workS()),
            new Part(
                "water given in excess",
                mine.water() - least.water(),
                mine.wastedM3() - least.wastedM3()));
    String before = ": ";
    for (Part part : parts) {
      if (Math.abs(part.money()) >= SMALL_CHANGE) {
        sentence.say(before).say(Math.abs(part.money()), Kind.MONEY);
        sentence.say((part.money() > 0 ? " more for " : " less for ") + part.name());
        amount(part, sentence);
        before = ", ";
      }
    }
    sentence.say(".");
    double evener = way.emissionUniformity() - cheapest.emissionUniformity();
    if (Math.abs(evener) > 0.0005) {
      sentence
          .say(evener > 0 ? " It waters more evenly: " : " It waters less evenly: ")
          .say(way.emissionUniformity(), Kind.SHARE)
          .say(" beside ")
          .say(cheapest.emissionUniformity(), Kind.SHARE)
          .say(".");
    }
  }

  /** A part of the cost: how much more money it takes, and how much more of what is paid for. */
  private record Part(String name, double money, double amount) {}

  private static void amount(Part part, Sentence sentence) {
    double size = Math.abs(part.amount());
    String more = part.amount() > 0 ? " more" : " fewer";
    switch (part.name()) {
      case "pipe" -> {
        if (size >= 0.5) {
          sentence.say(" (").say(size, Kind.LENGTH).say(part.amount() > 0 ? " more)" : " less)");
        } else {
          sentence.say(" of other sizes");
        }
      }
      case "work" ->
          sentence.say(" (").say(size, Kind.WORK_TIME).say(part.amount() > 0 ? " more)" : " less)");
      case "water given in excess" ->
          sentence
              .say(" (")
              .say(size, Kind.WATER_VOLUME)
              .say(part.amount() > 0 ? " more)" : " less)");
      default -> {
        if (size > 0) {
          sentence.say(" (").say(size, Kind.COUNT).say(more + " emitters)");
        }
      }
    }
  }
}
