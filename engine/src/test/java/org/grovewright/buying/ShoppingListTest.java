package org.grovewright.buying;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.grovewright.buying.ShoppingLine.PriceOrigin;
import org.grovewright.catalogue.Part;
import org.grovewright.demand.Requirement;
import org.grovewright.finding.Finding;
import org.grovewright.model.Stock;
import org.grovewright.quantity.FigureBook;
import org.grovewright.quantity.Kind;
import org.grovewright.work.Samples;
import org.junit.jupiter.api.Test;

class ShoppingListTest {
  private final Samples samples = new Samples();
  private final FigureBook figures = new FigureBook();

  private ShoppingList list(Requirement... requirements) {
    return ShoppingList.of(List.of(requirements), samples.grove(), samples.catalogue(), figures);
  }

  private static Requirement need(String item, Kind kind, double amount) {
    return new Requirement(item, kind, amount, "a test", "test.amount", List.of());
  }

  private static Requirement pipe(double... cuts) {
    double sum = 0;
    List<Requirement.Cut> list = new java.util.ArrayList<>();
    for (double cut : cuts) {
      sum += cut;
      list.add(new Requirement.Cut("run " + (list.size() + 1), cut));
    }
    return new Requirement("pipe.main", Kind.LENGTH, sum, "the main", "test.amount", list);
  }

  /** By hand: (2 + 1) x 1.1 = 3.3 m3, less 0.5 on hand is 2.8, 3 loads at 40 are 120. */
  @Test
  void roundsBulkGoodsUpToLoads() {
    samples.ownPrices.put("mix.test", new Stock.Price(1, 40));
    samples.onHand.put("mix.test", 0.5);
    ShoppingList list =
        list(need("mix.test", Kind.BULK_VOLUME, 2), need("mix.test", Kind.BULK_VOLUME, 1));

    ShoppingLine line = list.find("mix.test").orElseThrow();
    assertThat(line.net()).isEqualTo(3);
    assertThat(line.withWaste()).isCloseTo(3.3, within(1e-12));
    assertThat(line.packs()).isEqualTo(3);
    assertThat(line.leftOver()).isCloseTo(0.2, within(1e-12));
    assertThat(line.cost()).hasValue(120);
    assertThat(list.total()).isEqualTo(120);
    assertThat(list.complete()).isTrue();
    assertThat(list.findings()).isEmpty();
    assertThat(figures.get("buy.mix.test.packs").value()).isEqualTo(3);
    assertThat(figures.get("buy.mix.test.cost").value()).isEqualTo(120);
    assertThat(figures.get("buy.total.cost").value()).isEqualTo(120);
  }

  @Test
  void aWholeNumberOfPacksIsNotRoundedUp() {
    samples.ownPrices.put("part.cap", new Stock.Price(0.1, 1));
    assertThat(list(need("part.cap", Kind.COUNT, 0.3)).lines().get(0).packs()).isEqualTo(3);
  }

  @Test
  void whatIsOnHandIsNotBought() {
    samples.onHand.put("mix.test", 9.0);
    ShoppingList list = list(need("mix.test", Kind.BULK_VOLUME, 2));
    assertThat(list.lines().get(0).packs()).isZero();
    assertThat(list.lines().get(0).cost()).hasValue(0);
    assertThat(list.findings()).isEmpty();
    assertThat(list.complete()).isTrue();
  }

  @Test
  void anUnknownPriceIsNotNothing() {
    ShoppingList list = list(need("part.cap", Kind.COUNT, 4));
    ShoppingLine line = list.lines().get(0);
    assertThat(line.packs()).isEqualTo(4);
    assertThat(line.cost()).isEmpty();
    assertThat(line.priceOrigin()).isEqualTo(PriceOrigin.UNKNOWN);
    assertThat(list.complete()).isFalse();
    assertThat(list.findings()).extracting(Finding::code).containsExactly("buy.no-price");
    assertThat(figures.find("buy.part.cap.cost")).isEmpty();
  }

  @Test
  void pricesInAnotherCurrencyStayOutOfTheTotal() {
    samples.prices.add(Samples.price("part.cap", 1, Kind.COUNT, 3, "USD"));
    samples.prices.add(Samples.price("mix.test", 1, Kind.BULK_VOLUME, 40, "EUR"));
    ShoppingList list =
        list(need("part.cap", Kind.COUNT, 2), need("mix.test", Kind.BULK_VOLUME, 0.5));

    assertThat(list.total()).isEqualTo(40);
    assertThat(list.complete()).isFalse();
    assertThat(list.otherCurrencies()).containsExactly(java.util.Map.entry("USD", 6.0));
    assertThat(list.findings())
        .extracting(Finding::code)
        .containsExactly("buy.typical-price", "buy.other-currency");
    assertThat(figures.find("buy.part.cap.cost")).isEmpty();
  }

  @Test
  void theOwnersPriceTakesThePlaceOfTheTypicalOne() {
    samples.prices.add(Samples.price("mix.test", 1, Kind.BULK_VOLUME, 40, "USD"));
    samples.ownPrices.put("mix.test", new Stock.Price(0.5, 15));
    ShoppingList list = list(need("mix.test", Kind.BULK_VOLUME, 1));
    assertThat(list.lines().get(0).packs()).isEqualTo(3);
    assertThat(list.total()).isEqualTo(45);
  }

  /** 400 kg at 800 kg/m3 are 0.5 m3. */
  @Test
  void convertsMassByBulkDensity() {
    samples.prices.add(Samples.price("mix.test", 1, Kind.BULK_VOLUME, 40, "EUR"));
    ShoppingLine line = list(need("mix.test", Kind.MASS, 400)).lines().get(0);
    assertThat(line.kind()).isEqualTo(Kind.BULK_VOLUME);
    assertThat(line.net()).isEqualTo(0.5);
  }

  @Test
  void aPriceInAMeasureThatDoesNotConvertIsNotUsed() {
    samples.prices.add(Samples.price("part.cap", 1, Kind.MASS, 40, "EUR"));
    ShoppingList list = list(need("part.cap", Kind.COUNT, 4));
    assertThat(list.lines().get(0).cost()).isEmpty();
    assertThat(list.findings())
        .extracting(Finding::code)
        .containsExactly("buy.price-measure", "buy.no-price");
  }

  /** 100 emitters and 5 % spares. */
  @Test
  void addsSpareEmitters() {
    samples.ownPrices.put("emitter.one", new Stock.Price(25, 8));
    ShoppingLine line = list(need("emitter.one", Kind.COUNT, 100)).lines().get(0);
    assertThat(line.withWaste()).isEqualTo(105);
    assertThat(line.packs()).isEqualTo(5);
    assertThat(line.leftOver()).isEqualTo(20);
  }

  /**
   * Ten runs of 3.3 m with 5 % are 3.465 m each, 34.65 m in all: ten lengths of 6 m whole, six with
   * at most five joints. At 9 a length and 1 a coupling joints save 36 and cost at most 5.
   */
  @Test
  void joinsPipeWhereThatIsCheaperAndBuysTheCouplings() {
    double[] runs = new double[10];
    java.util.Arrays.fill(runs, 3.3);
    samples.ownPrices.put("pipe.main", new Stock.Price(6, 9));
    assertThat(list(pipe(runs)).find("pipe.main").orElseThrow().packs()).isEqualTo(10);

    samples.parts.add(new Part("part.coupling", "coupling", "coupling", "pipe.main", 0.1, "test"));
    samples.ownPrices.put("part.coupling", new Stock.Price(1, 1));
    ShoppingList joined =
        ShoppingList.of(
            List.of(pipe(runs)), samples.grove(), samples.catalogue(), new FigureBook());
    ShoppingLine pipe = joined.find("pipe.main").orElseThrow();
    assertThat(pipe.packs()).isEqualTo(6);
    int joints = pipe.cutting().orElseThrow().joints();
    assertThat(joints).isBetween(4, 5);
    assertThat(joined.find("part.coupling").orElseThrow().packs()).isEqualTo(joints);
    assertThat(joined.total()).isEqualTo(6 * 9 + joints);

    samples.ownPrices.put("part.coupling", new Stock.Price(1, 20));
    ShoppingList dear =
        ShoppingList.of(
            List.of(pipe(runs)), samples.grove(), samples.catalogue(), new FigureBook());
    assertThat(dear.find("pipe.main").orElseThrow().packs()).isEqualTo(10);
    assertThat(dear.find("part.coupling")).isEmpty();
  }

  @Test
  void saysThatNoCouplingFits() {
    samples.ownPrices.put("pipe.main", new Stock.Price(6, 9));
    ShoppingList list = list(pipe(13));
    assertThat(list.findings()).extracting(Finding::code).containsExactly("buy.no-coupling");
    assertThat(list.lines()).hasSize(1);
  }

  @Test
  void cutsFromPipeOnHandFirst() {
    samples.ownPrices.put("pipe.main", new Stock.Price(100, 60));
    samples.onHand.put("pipe.main", 45.0);
    ShoppingList list = list(pipe(40, 30, 30));
    ShoppingLine line = list.lines().get(0);
    assertThat(line.packs()).isEqualTo(1);
    assertThat(line.cutting().orElseThrow().lengths().get(0).onHand()).isTrue();
    assertThat(line.leftOver()).isCloseTo(45 + 100 - 105, within(1e-9));
    assertThat(list.findings()).extracting(Finding::code).containsExactly("buy.pipe-on-hand");
  }

  @Test
  void refusesWhatCannotBe() {
    assertThatThrownBy(() -> list(need("mix.test", Kind.BULK_VOLUME, -1)))
        .hasMessageContaining("zero or more");
    assertThatThrownBy(
            () -> list(need("part.cap", Kind.COUNT, 1), need("part.cap", Kind.LENGTH, 1)))
        .hasMessageContaining("part.cap is needed both");
  }
}
