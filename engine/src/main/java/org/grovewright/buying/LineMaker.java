package org.grovewright.buying;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.grovewright.buying.ShoppingLine.PriceOrigin;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Constant;
import org.grovewright.catalogue.Part;
import org.grovewright.demand.Requirement;
import org.grovewright.finding.Finding;
import org.grovewright.finding.Finding.Severity;
import org.grovewright.model.Stock;
import org.grovewright.quantity.Figure;
import org.grovewright.quantity.FigureBook;
import org.grovewright.quantity.Input;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Quantity;
import org.grovewright.quantity.Working;

/** Makes the lines of one shopping list, with their figures. */
final class LineMaker {
  /** Relative slack in rounding up, so that 3.0000000001 packs are three. */
  private static final double ROUNDING = 1e-9;

  private final Stock stock;
  private final Catalogue catalogue;
  private final FigureBook figures;
  private final Goods goods;
  private final List<Requirement> couplings = new ArrayList<>();
  private final List<Finding> findings = new ArrayList<>();

  LineMaker(Stock stock, Catalogue catalogue, FigureBook figures) {
    this.stock = stock;
    this.catalogue = catalogue;
    this.figures = figures;
    this.goods = new Goods(catalogue);
  }

  /** Couplings that the joints of the pipes made so far need. */
  List<Requirement> couplings() {
    return List.copyOf(couplings);
  }

  List<Finding> findings() {
    return List.copyOf(findings);
  }

  ShoppingLine line(String key, List<Requirement> uses) {
    Offer offer = offer(key, uses);
    Figure net = net(key, uses, offer.kind());
    Optional<Constant> allowance = allowance(key, offer.kind());
    Figure withWaste = withWaste(key, net, allowance);
    double onHand = stock.onHand().getOrDefault(key, 0.0);
    boolean pipe =
        catalogue.pipes().containsKey(key)
            && offer.kind() == Kind.LENGTH
            && offer.packSize().isPresent();
    if (pipe) {
      return pipeLine(key, uses, offer, net, withWaste, onHand);
    }
    double missing = Math.max(0, withWaste.value() - onHand);
    double pack = offer.packSize().orElse(offer.kind() == Kind.COUNT ? 1 : 0);
    double packs = pack > 0 ? roundUp(missing / pack) : missing;
    Figure packed =
        figures.enter(
            Ids.of(key) + ".packs",
            goods.name(key) + (pack > 0 ? ": packs to buy" : ": amount to buy"),
            packs,
            pack > 0 ? Kind.COUNT : offer.kind(),
            pack > 0
                ? Working.of(
                    "n = ceil(max(0, Q - H) / P)",
                    Working.COMMON_PRACTICE,
                    Input.from("Q (needed)", withWaste),
                    onHandInput(onHand, offer.kind()),
                    new Input("P (pack)", pack, offer.kind(), offer.source()))
                : Working.of(
                    "max(0, Q - H)",
                    Working.COMMON_PRACTICE,
                    Input.from("Q (needed)", withWaste),
                    onHandInput(onHand, offer.kind())));
    double bought = pack > 0 ? packs * pack : packs;
    return finish(key, uses, offer, net, withWaste, onHand, packed, bought, Optional.empty());
  }

  private Offer offer(String key, List<Requirement> uses) {
    Kind asked = uses.get(0).kind();
    Offer offer = Offer.of(key, asked, stock, catalogue);
    for (Requirement use : uses) {
      if (goods.convert(key, use.quantity(), use.kind(), offer.kind()).isEmpty()) {
        findings.add(
            Finding.of(
                "buy.price-measure",
                Severity.NOTE,
                key,
                "The price of "
                    + goods.name(key)
                    + " is for another measure than the one it is needed in, so it is not used."));
        return offer.unusable(asked, stock.currency());
      }
    }
    return offer;
  }

  private Figure net(String key, List<Requirement> uses, Kind kind) {
    List<Input> inputs = new ArrayList<>();
    double sum = 0;
    boolean converted = false;
    for (Requirement use : uses) {
      OptionalDouble amount = goods.convert(key, use.quantity(), use.kind(), kind);
      if (amount.isEmpty()) {
        throw new IllegalArgumentException(
            key + " is needed both as " + use.kind() + " and as " + kind);
      }
      converted |= use.kind() != kind;
      sum += amount.getAsDouble();
      inputs.add(new Input("q", use.quantity(), use.kind(), use.figureId()));
    }
    return figures.enter(
        Ids.of(key) + ".net",
        goods.name(key) + ": needed, without waste",
        sum,
        kind,
        new Working(
            converted ? "sum(q), by the catalogue's bulk density" : "sum(q)",
            inputs,
            Working.COMMON_PRACTICE));
  }

  private Optional<Constant> allowance(String key, Kind kind) {
    if (kind == Kind.LENGTH) {
      return Optional.of(catalogue.constant("buy.waste-pipe"));
    }
    if (kind == Kind.BULK_VOLUME) {
      return Optional.of(catalogue.constant("buy.waste-bulk"));
    }
    return catalogue.emitters().containsKey(key)
        ? Optional.of(catalogue.constant("buy.spare-emitters"))
        : Optional.empty();
  }

  private Figure withWaste(String key, Figure net, Optional<Constant> allowance) {
    String label = goods.name(key) + ": needed, with waste and spares";
    if (allowance.isEmpty()) {
      return figures.enter(
          Ids.of(key) + ".with-waste",
          label,
          net.value(),
          net.kind(),
          Working.of("Q = q, no allowance", Working.COMMON_PRACTICE, Input.from("q (net)", net)));
    }
    double more = net.value() * (1 + allowance.get().value());
    boolean count = net.kind() == Kind.COUNT;
    return figures.enter(
        Ids.of(key) + ".with-waste",
        label,
        count ? roundUp(more) : more,
        net.kind(),
        Working.of(
            count ? "Q = ceil(q (1 + w))" : "Q = q (1 + w)",
            allowance.get().source(),
            Input.from("q (net)", net),
            allowance.get().as("w (allowance)")));
  }

  private ShoppingLine pipeLine(
      String key,
      List<Requirement> uses,
      Offer offer,
      Figure net,
      Figure withWaste,
      double onHand) {
    double pack = offer.packSize().getAsDouble();
    double more = withWaste.value() / net.value();
    List<Requirement.Cut> pieces = new ArrayList<>();
    for (Requirement use : uses) {
      double cut = 0;
      for (Requirement.Cut piece : use.cuts()) {
        if (piece.lengthM() > 0) {
          pieces.add(new Requirement.Cut(piece.label(), piece.lengthM() * more));
          cut += piece.lengthM();
        }
      }
      // What no cut list covers is one run.
      double rest = use.quantity() - cut;
      if (rest > 1e-6) {
        pieces.add(new Requirement.Cut(use.purpose(), rest * more));
      }
    }
    Constant leastPart = catalogue.constant("buy.least-joined-part");
    PipeCutting problem = new PipeCutting(pieces, onHand, pack, leastPart.value());
    CuttingPlan cutting = cheaper(key, offer, problem);
    if (onHand > 0) {
      findings.add(
          Finding.of(
              "buy.pipe-on-hand",
              Severity.NOTE,
              key,
              "The {0} of "
                  + goods.name(key)
                  + " on hand are taken to be whole coils or lengths of {1} and one remainder."
                  + " Check that before cutting.",
              new Quantity(onHand, Kind.LENGTH),
              new Quantity(pack, Kind.LENGTH)));
    }
    Figure packed =
        figures.enter(
            Ids.of(key) + ".packs",
            goods.name(key) + ": coils or lengths to buy",
            cutting.bought(),
            Kind.COUNT,
            Working.of(
                "cutting stock: all pieces cut from what is on hand and the fewest coils or"
                    + " lengths, "
                    + (cutting.provenFewest()
                        ? "proved the fewest"
                        : "best found, not proved the fewest"),
                "Martello and Toth, Knapsack Problems (1990), from memory",
                Input.from("Q (needed)", withWaste),
                new Input("pieces", pieces.size(), Kind.COUNT, "cut list"),
                onHandInput(onHand, Kind.LENGTH),
                new Input("P (coil or length)", pack, Kind.LENGTH, offer.source())));
    askForCouplings(key, cutting, leastPart);
    return finish(
        key,
        uses,
        offer,
        net,
        withWaste,
        onHand,
        packed,
        cutting.bought() * pack,
        Optional.of(cutting));
  }

  /** Whole pieces, unless joints save more in pipe than they cost in couplings. */
  private CuttingPlan cheaper(String key, Offer offer, PipeCutting problem) {
    CuttingPlan whole = problem.whole();
    Optional<Part> coupling = goods.coupling(key);
    if (coupling.isEmpty()) {
      return whole;
    }
    CuttingPlan joined = problem.joined();
    Offer price = Offer.of(coupling.get().key(), Kind.COUNT, stock, catalogue);
    boolean comparable =
        offer.packPrice().isPresent()
            && price.packPrice().isPresent()
            && price.kind() == Kind.COUNT
            && price.currency().equals(offer.currency());
    if (!comparable) {
      return whole;
    }
    double each = price.packPrice().getAsDouble() / price.packSize().getAsDouble();
    double saved = (whole.bought() - joined.bought()) * offer.packPrice().getAsDouble();
    return saved > (joined.joints() - whole.joints()) * each ? joined : whole;
  }

  private void askForCouplings(String key, CuttingPlan cutting, Constant leastPart) {
    if (cutting.joints() == 0) {
      return;
    }
    Figure joints =
        figures.enter(
            Ids.of(key) + ".joints",
            goods.name(key) + ": joints within a run",
            cutting.joints(),
            Kind.COUNT,
            Working.of(
                "counted in the cutting plan; no part shorter than the least part",
                Working.COMMON_PRACTICE,
                leastPart.as("least part")));
    Optional<Part> coupling = goods.coupling(key);
    if (coupling.isEmpty()) {
      findings.add(
          Finding.of(
              "buy.no-coupling",
              Severity.NOTE,
              key,
              "{0} joints in "
                  + goods.name(key)
                  + " need couplings, but the catalogue has none that fits. Add them to the list"
                  + " yourself.",
              new Quantity(cutting.joints(), Kind.COUNT)));
      return;
    }
    couplings.add(
        new Requirement(
            coupling.get().key(),
            Kind.COUNT,
            cutting.joints(),
            "joints within runs of " + goods.name(key),
            joints.id(),
            List.of()));
  }

  private ShoppingLine finish(
      String key,
      List<Requirement> uses,
      Offer offer,
      Figure net,
      Figure withWaste,
      double onHand,
      Figure packed,
      double bought,
      Optional<CuttingPlan> cutting) {
    double left = Math.max(0, onHand + bought - withWaste.value());
    figures.enter(
        Ids.of(key) + ".left-over",
        goods.name(key) + ": left over",
        left,
        offer.kind(),
        Working.of(
            "H + B - Q",
            Working.COMMON_PRACTICE,
            onHandInput(onHand, offer.kind()),
            new Input("B (bought)", bought, offer.kind(), packed.id()),
            Input.from("Q (needed)", withWaste)));
    OptionalDouble cost = cost(key, offer, packed);
    return new ShoppingLine(
        key,
        goods.name(key),
        offer.kind(),
        net.value(),
        withWaste.value(),
        onHand,
        offer.packSize(),
        packed.value(),
        left,
        offer.packPrice(),
        cost,
        offer.currency(),
        offer.origin(),
        uses,
        cutting);
  }

  private OptionalDouble cost(String key, Offer offer, Figure packed) {
    boolean nothing = packed.value() == 0;
    if (offer.packPrice().isEmpty() && !nothing) {
      return OptionalDouble.empty();
    }
    double price = offer.packPrice().orElse(0);
    double cost = packed.value() * price;
    if (nothing || offer.origin() != PriceOrigin.TYPICAL_OTHER_CURRENCY) {
      figures.enter(
          Ids.of(key) + ".cost",
          goods.name(key) + ": cost",
          cost,
          Kind.MONEY,
          nothing
              ? Working.of(
                  "nothing to buy", Working.COMMON_PRACTICE, Input.from("n (packs)", packed))
              : Working.of(
                  "n * c",
                  Working.COMMON_PRACTICE,
                  Input.from("n (packs)", packed),
                  new Input("c (price of a pack)", price, Kind.MONEY, offer.source())));
    }
    return OptionalDouble.of(cost);
  }

  private static Input onHandInput(double onHand, Kind kind) {
    return new Input("H (on hand)", onHand, kind, "description: stock on hand");
  }

  private static double roundUp(double amount) {
    return Math.ceil(amount - ROUNDING * Math.max(1, amount));
  }
}
