package org.grovewright.buying;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.grovewright.buying.ShoppingLine.PriceOrigin;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.demand.Requirement;
import org.grovewright.finding.Finding;
import org.grovewright.finding.Finding.Severity;
import org.grovewright.model.Grove;
import org.grovewright.quantity.FigureBook;
import org.grovewright.quantity.Input;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Quantity;
import org.grovewright.quantity.Working;

/**
 * What to buy and what it costs.
 *
 * <p>Figures for each item: {@code buy.<item-key>.net}, {@code .with-waste}, {@code .packs}, {@code
 * .left-over}, for pipe {@code .joints} where it is joined, and {@code .cost} where the price is
 * known in the plan's currency; {@code buy.total.cost} is their sum.
 *
 * @param lines the items, in the order in which they were first asked for, couplings that joints
 *     need last
 * @param total cost of all lines whose price is known in the plan's currency
 * @param complete whether the total holds every line
 * @param otherCurrencies sum of the typical prices in other currencies, by ISO 4217 code; not in
 *     the total
 * @param findings remarks
 */
public record ShoppingList(
    List<ShoppingLine> lines,
    double total,
    boolean complete,
    Map<String, Double> otherCurrencies,
    List<Finding> findings) {
  private static final int MOST_NAMED = 6;

  /** Copies the collections. */
  public ShoppingList {
    lines = List.copyOf(lines);
    otherCurrencies = Collections.unmodifiableMap(new LinkedHashMap<>(otherCurrencies));
    findings = List.copyOf(findings);
  }

  /**
   * Makes the list.
   *
   * @param requirements all goods the plan needs
   * @param grove gives what is on hand, the owner's prices and the currency
   * @param catalogue gives names, typical prices, couplings and allowances
   * @param figures takes the figures of the list
   * @throws IllegalArgumentException if an item is asked for in measures that do not convert, or in
   *     a negative amount
   */
  public static ShoppingList of(
      List<Requirement> requirements, Grove grove, Catalogue catalogue, FigureBook figures) {
    Map<String, List<Requirement>> byItem = new LinkedHashMap<>();
    for (Requirement requirement : requirements) {
      if (!(requirement.quantity() >= 0) || Double.isInfinite(requirement.quantity())) {
        throw new IllegalArgumentException(
            "the amount of "
                + requirement.itemKey()
                + " must be zero or more, but it is "
                + requirement.quantity());
      }
      if (requirement.quantity() > 0) {
        byItem.computeIfAbsent(requirement.itemKey(), k -> new ArrayList<>()).add(requirement);
      }
    }
    LineMaker maker = new LineMaker(grove.stock(), catalogue, figures);
    // Pipe first: its joints ask for couplings, which may be on the list already.
    Map<String, ShoppingLine> made = new LinkedHashMap<>();
    for (Map.Entry<String, List<Requirement>> item : byItem.entrySet()) {
      if (catalogue.pipes().containsKey(item.getKey())) {
        made.put(item.getKey(), maker.line(item.getKey(), item.getValue()));
      }
    }
    for (Requirement coupling : maker.couplings()) {
      byItem.computeIfAbsent(coupling.itemKey(), k -> new ArrayList<>()).add(coupling);
    }
    List<ShoppingLine> lines = new ArrayList<>();
    for (Map.Entry<String, List<Requirement>> item : byItem.entrySet()) {
      ShoppingLine pipe = made.get(item.getKey());
      lines.add(pipe != null ? pipe : maker.line(item.getKey(), item.getValue()));
    }
    List<Finding> findings = new ArrayList<>(maker.findings());
    findings.addAll(aboutPrices(lines));
    return total(lines, grove.stock().currency(), findings, figures);
  }

  private static List<Finding> aboutPrices(List<ShoppingLine> lines) {
    List<Finding> findings = new ArrayList<>();
    List<String> typical = new ArrayList<>();
    List<String> other = new ArrayList<>();
    for (ShoppingLine line : lines) {
      if (line.packs() == 0) {
        continue;
      }
      switch (line.priceOrigin()) {
        case TYPICAL -> typical.add(line.name());
        case TYPICAL_OTHER_CURRENCY -> other.add(line.name() + " (" + line.currency() + ")");
        case UNKNOWN ->
            findings.add(
                Finding.of(
                    "buy.no-price",
                    Severity.NOTE,
                    line.itemKey(),
                    "No price is known for "
                        + line.name()
                        + ", so its cost is not in the total. Give your own price under stock."));
        case OWNER -> {}
      }
    }
    if (!typical.isEmpty()) {
      findings.add(typicalPrices(typical, lines));
    }
    if (!other.isEmpty()) {
      findings.add(
          Finding.of(
              "buy.other-currency",
              Severity.NOTE,
              "",
              "Only typical prices in another currency are known for these, and they are not in"
                  + " the total: "
                  + String.join(", ", other)
                  + ". Give your own prices under stock."));
    }
    return findings;
  }

  private static Finding typicalPrices(List<String> typical, List<ShoppingLine> lines) {
    // A long list of names hides the remark, and the shopping list marks each of them anyway.
    if (typical.size() <= MOST_NAMED) {
      return Finding.of(
          "buy.typical-price",
          Severity.NOTE,
          "",
          "Typical prices stand in for your own for: " + String.join(", ", typical) + ".");
    }
    long bought = lines.stream().filter(line -> line.packs() > 0).count();
    return Finding.of(
        "buy.typical-price",
        Severity.NOTE,
        "",
        "Typical prices stand in for your own for {0} of the {1} things to buy; the shopping list"
            + " marks each of them.",
        new Quantity(typical.size(), Kind.COUNT),
        new Quantity(bought, Kind.COUNT));
  }

  private static ShoppingList total(
      List<ShoppingLine> lines, String currency, List<Finding> findings, FigureBook figures) {
    List<Input> parts = new ArrayList<>();
    Map<String, Double> other = new LinkedHashMap<>();
    double total = 0;
    boolean complete = true;
    for (ShoppingLine line : lines) {
      if (line.priceOrigin() == PriceOrigin.TYPICAL_OTHER_CURRENCY && line.packs() > 0) {
        other.merge(line.currency(), line.cost().orElse(0), Double::sum);
        complete = false;
      } else if (line.cost().isPresent()) {
        total += line.cost().getAsDouble();
        parts.add(Input.from("C", figures.get(line.figurePrefix() + ".cost")));
      } else {
        complete = false;
      }
    }
    figures.enter(
        "buy.total.cost",
        complete
            ? "Cost of all that is to be bought"
            : "Cost of what is to be bought at a price known in " + currency,
        total,
        Kind.MONEY,
        new Working("sum(C)", parts, Working.COMMON_PRACTICE));
    return new ShoppingList(lines, total, complete, other, findings);
  }

  /** The line of an item, if it is on the list. */
  public Optional<ShoppingLine> find(String itemKey) {
    return lines.stream().filter(l -> l.itemKey().equals(itemKey)).findFirst();
  }
}
