package org.grovewright.start;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.files.CatalogueFiles;
import org.grovewright.formats.description.DescriptionReader;
import org.grovewright.formats.weather.WeatherOfDescription;
import org.grovewright.model.Grove;
import org.grovewright.model.Planting;
import org.grovewright.plan.Planner;
import org.grovewright.start.FirstPlan.Draft;
import org.grovewright.texts.Language;
import org.junit.jupiter.api.Test;

class FirstPlanTest {
  private static final LocalDate TODAY = LocalDate.of(2027, 1, 10);
  private static final Catalogue CATALOGUE = CatalogueFiles.load().catalogue();
  private static final DescriptionReader READER =
      new DescriptionReader(CATALOGUE, new WeatherOfDescription());

  private final FirstPlan firstPlan = new FirstPlan(CATALOGUE, READER);
  private final ObjectNode answers = new ObjectMapper().createObjectNode();

  private void least() {
    answers.put("name", "Plot: \"west\" # 3");
    answers.put("width", "30").put("length", "20");
    answers.put("supply", "house-tap");
    plant("apple", "4");
    plant("fig", "2");
  }

  private void plant(String species, String count) {
    answers.withArray("plants").addObject().put("species", species).put("count", count);
  }

  private Draft draft() {
    return firstPlan.draft(answers, TODAY, Language.ENGLISH);
  }

  private Grove grove() {
    Draft draft = draft();
    assertThat(draft.problems()).isEmpty();
    return READER.describe(draft.description().orElseThrow(), "first").grove();
  }

  private List<String> problems() {
    return draft().problems().stream().map(p -> p.field() + ":" + p.code()).toList();
  }

  @Test
  void theLeastThatMustBeSaidGivesAGroveThatCanBePlannedWithEveryAssumptionNamed() {
    least();
    Draft draft = draft();
    Grove grove = grove();

    assertThat(grove.site().name()).isEqualTo("Plot: \"west\" # 3");
    assertThat(grove.plantings()).hasSize(6);
    assertThat(draft.assumptions())
        .extracting(Remark::field)
        .contains(
            "latitude",
            "longitude",
            "elevation",
            "north",
            "slope",
            "texture",
            "depth",
            "climate",
            "pressure",
            "bucketSeconds",
            "planting",
            "people",
            "days");
    assertThat(Planner.plan(grove, CATALOGUE).watering().zones()).isNotEmpty();
  }

  @Test
  void everyAnswerReplacesItsAssumption() {
    least();
    answers
        .put("latitude", "-33,5")
        .put("longitude", "18.9")
        .put("elevation", "120")
        .put("north", "15")
        .put("slope", "top")
        .put("slopeRise", "1")
        .put("slopeRun", "20")
        .put("texture", "sandy-loam")
        .put("depth", "60")
        .put("holeDrop", "12")
        .put("holeHours", "2")
        .put("ph", "6.2")
        .put("bucketVolume", "12")
        .put("bucketSeconds", "40")
        .put("pressure", "3")
        .put("tapX", "1")
        .put("tapY", "2")
        .put("planting", "2027-03-20")
        .put("currency", "USD")
        .put("people", "2")
        .put("climate", "months");
    answers.withArray("days").add("Sat").add("Sun");
    answers.withArray("waterDays").add("Sat").add("Wed");
    for (int i = 0; i < 12; i++) {
      answers.withArray("tmin").add(Integer.toString(8 + i % 3));
      answers.withArray("tmax").add(Integer.toString(20 + i % 3));
      answers.withArray("rain").add("40");
    }
    Draft draft = draft();
    Grove grove = grove();

    assertThat(draft.assumptions()).extracting(Remark::field).containsOnly("plants");
    assertThat(grove.site().latitudeDeg()).isEqualTo(-33.5);
    assertThat(grove.site().spotHeights()).hasSize(4);
    assertThat(grove.site().spotHeights().get(2).heightM()).isEqualTo(1.0);
    assertThat(grove.supply().flowTests().get(0).flowM3PerS()).isEqualTo(0.012 / 40);
    assertThat(grove.soil().depthM()).isEqualTo(0.6);
    assertThat(grove.crew().people()).isEqualTo(2);
    assertThat(grove.supply().allowedDays().weekdays())
        .containsExactly(DayOfWeek.WEDNESDAY, DayOfWeek.SATURDAY);
  }

  @Test
  void theSeasonsOfAUsualClimateAreTurnedRoundInTheSouth() {
    least();
    answers.put("latitude", "-38").put("climate", "dry-summer");
    Grove grove = grove();
    assertThat(grove.climate().normals().get(0).tmaxC()).isEqualTo(32);
    assertThat(grove.climate().normals().get(6).tmaxC()).isEqualTo(13);
  }

  @Test
  void usAnswersAreReadInFeetGallonsAndPsi() {
    least();
    answers
        .put("units", "us")
        .put("width", "100")
        .put("length", "60")
        .put("bucketVolume", "5")
        .put("bucketSeconds", "60")
        .put("pressure", "50");
    Grove grove = grove();
    assertThat(grove.site().boundary().get(2).x()).isEqualTo(30.48);
    // 5 US gallons of 231 cubic inches a minute; 50 psi: definitions, from memory.
    assertThat(grove.supply().flowTests().get(0).flowM3PerS())
        .isCloseTo(5 * 3.785411784e-3 / 60, org.assertj.core.data.Offset.offset(1e-12));
    assertThat(grove.supply().staticPressurePa().orElseThrow())
        .isCloseTo(344_738, org.assertj.core.data.Offset.offset(1.0));
  }

  @Test
  void mistakesAreNamedByTheirFieldsAllAtOnce() {
    answers.put("width", "thirty").put("length", "1").put("bucketVolume", "10");
    answers.put("latitude", "91").put("supply", "river").put("texture", "mud");
    plant("appel", "3");
    plant("fig", "none");
    plant("fig", "0");
    assertThat(problems())
        .contains(
            "name:needed",
            "width:number",
            "length:range",
            "latitude:range",
            "supply:choose",
            "texture:choose",
            "bucketSeconds:needed",
            "plants[0].species:chooseSpecies",
            "plants[1].count:wholeNumber",
            "plants[2].count:range");
    assertThat(draft().description()).isEmpty();
  }

  @Test
  void landThatIsTooSmallIsSaidWithTheNumberThatFits() {
    least();
    plant("walnut", "30");
    Draft draft = draft();
    assertThat(draft.problems()).hasSize(1);
    assertThat(draft.problems().get(0).code()).isEqualTo("noRoom");
  }

  @Test
  void anOutlineThatCrossesItselfIsSaidBesideTheCorners() {
    least();
    answers.put("shape", "corners");
    for (double[] corner : new double[][] {{0, 0}, {40, 40}, {40, 0}, {0, 40}}) {
      answers.withArray("corners").addArray().add(corner[0]).add(corner[1]);
    }
    assertThat(problems()).containsAnyOf("corners:other", "plants:noRoom");
  }

  @Test
  void plantsStandAsFarApartAsTheirKindsUsuallyDoAndWithinTheLand() {
    least();
    answers.put("width", "60").put("length", "45");
    plant("walnut", "3");
    plant("blueberry", "12");
    plant("lemon", "7");
    List<Planting> plants = new ArrayList<>(grove().plantings());
    assertThat(plants).hasSize(28);
    for (int i = 0; i < plants.size(); i++) {
      for (int j = 0; j < i; j++) {
        double wanted = (spacing(plants.get(i)) + spacing(plants.get(j))) / 2;
        assertThat(plants.get(i).at().distanceTo(plants.get(j).at()))
            .as(plants.get(i).id() + " and " + plants.get(j).id())
            .isGreaterThan(wanted - 0.15);
      }
    }
  }

  private static double spacing(Planting plant) {
    return CATALOGUE.species().get(plant.speciesKey()).spacingM();
  }

  @Test
  void tallPlantsStandAwayFromTheEquator() {
    least();
    answers.put("width", "60").put("length", "45").put("latitude", "45");
    plant("walnut", "2");
    plant("blueberry", "8");
    assertThat(meanY("walnut")).isGreaterThan(meanY("blueberry"));
    answers.put("latitude", "-45");
    assertThat(meanY("walnut")).isLessThan(meanY("blueberry"));
  }

  private double meanY(String species) {
    return grove().plantings().stream()
        .filter(plant -> plant.speciesKey().equals(species))
        .mapToDouble(plant -> plant.at().y())
        .average()
        .orElseThrow();
  }

  @Test
  void layersOfAJarNameTheSoil() {
    // Corners and well-known points of the texture triangle of the USDA Soil Survey Manual, from
    // memory: equal parts are a clay loam, 40/40/20 is a loam.
    assertThat(TextureTriangle.classOf(1, 1, 1)).isEqualTo("clay-loam");
    assertThat(TextureTriangle.classOf(40, 40, 20)).isEqualTo("loam");
    assertThat(TextureTriangle.classOf(92, 5, 3)).isEqualTo("sand");
    assertThat(TextureTriangle.classOf(82, 12, 6)).isEqualTo("loamy-sand");
    assertThat(TextureTriangle.classOf(65, 25, 10)).isEqualTo("sandy-loam");
    assertThat(TextureTriangle.classOf(20, 65, 15)).isEqualTo("silt-loam");
    assertThat(TextureTriangle.classOf(7, 88, 5)).isEqualTo("silt");
    assertThat(TextureTriangle.classOf(60, 13, 27)).isEqualTo("sandy-clay-loam");
    assertThat(TextureTriangle.classOf(10, 56, 34)).isEqualTo("silty-clay-loam");
    assertThat(TextureTriangle.classOf(52, 6, 42)).isEqualTo("sandy-clay");
    assertThat(TextureTriangle.classOf(7, 47, 46)).isEqualTo("silty-clay");
    assertThat(TextureTriangle.classOf(20, 20, 60)).isEqualTo("clay");
    least();
    answers.put("sandLayer", "4").put("siltLayer", "4").put("clayLayer", "2");
    assertThat(grove().soil().textureKey()).contains("loam");
  }
}
