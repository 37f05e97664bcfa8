package org.grovewright.formats.geo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.grovewright.model.Point;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class GeoJsonBoundaryTest {
  private static final String RING = "[[[10,45],[10.001,45],[10.001,45.001],[10,45.001],[10,45]]]";

  /**
   * Lengths of a degree at latitude 45 on WGS 84 by the series of the meridian and parallel radii,
   * a = 6378137 m, f = 1/298.257223563: 111131.8 m of latitude and 78846.8 m of longitude; from
   * memory.
   */
  @Test
  void aThousandthOfADegree() {
    GeoJsonBoundary boundary =
        GeoJsonBoundary.read("{\"type\":\"Polygon\",\"coordinates\":" + RING + "}");
    assertThat(boundary.corners()).hasSize(4);
    assertThat(boundary.corners().get(0)).isEqualTo(new Point(0, 0));
    assertThat(boundary.corners().get(1).x()).isCloseTo(78.847, within(0.001));
    assertThat(boundary.corners().get(1).y()).isCloseTo(0, within(0.001));
    assertThat(boundary.corners().get(3).x()).isCloseTo(0, within(0.001));
    assertThat(boundary.corners().get(3).y()).isCloseTo(111.132, within(0.001));
  }

  @Test
  void featuresAndCollections() {
    String feature =
        "{\"type\":\"Feature\",\"properties\":{},\"geometry\":{\"type\":\"Polygon\","
            + "\"coordinates\":"
            + RING
            + "}}";
    GeoJsonBoundary one = GeoJsonBoundary.read(feature);
    assertThat(
            GeoJsonBoundary.read("{\"type\":\"FeatureCollection\",\"features\":[" + feature + "]}"))
        .isEqualTo(one);
    // RFC 7946, 3.1.7: a MultiPolygon is an array of what a Polygon holds.
    assertThat(GeoJsonBoundary.read("{\"type\":\"MultiPolygon\",\"coordinates\":[" + RING + "]}"))
        .isEqualTo(one);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "[",
        "{}",
        "null",
        "{\"type\":\"Point\",\"coordinates\":[1,2]}",
        "{\"type\":\"Polygon\"}",
        "{\"type\":\"Polygon\",\"coordinates\":[[[1,2],[3,4]]]}",
        "{\"type\":\"Polygon\",\"coordinates\":[[[1,2],[\"a\",4],[5,6]]]}",
        "{\"type\":\"Polygon\",\"coordinates\":[[[1,2],[3,4],[5,6]]]}",
        "{\"type\":\"Polygon\",\"coordinates\":[[[0,91],[0.001,91],[0.001,91.001]]]}",
        "{\"type\":\"Polygon\",\"coordinates\":[[[1,2],[1.001,2],[1,2.001]],[[1,2],[1,2],[1,2]]]}",
        "{\"type\":\"FeatureCollection\",\"features\":[]}",
        "{\"type\":\"MultiPolygon\",\"coordinates\":[]}",
        "{\"type\":\"MultiPolygon\",\"coordinates\":[" + RING + "," + RING + "]}",
        "{\"type\":\"Polygon\",\"coordinates\":"
            + RING
            + ",\"crs\":{\"type\":\"name\",\"properties\":{\"name\":\"EPSG:32633\"}}}",
      })
  void refusesWhatIsNoBoundary(String text) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> GeoJsonBoundary.read(text))
        .satisfies(e -> assertThat(e.getMessage()).isNotBlank());
  }

  @Property
  void placesProjectThereAndBack(
      @ForAll @DoubleRange(min = -66, max = 66) double latitude,
      @ForAll @DoubleRange(min = -179, max = 179) double longitude,
      @ForAll @DoubleRange(min = -1000, max = 1000) double x,
      @ForAll @DoubleRange(min = -1000, max = 1000) double y) {
    LocalPlane plane = new LocalPlane(latitude, longitude);
    double[] earth = plane.unproject(new Point(x, y));
    assertThat(plane.project(earth[0], earth[1]).distanceTo(new Point(x, y))).isLessThan(1e-6);
  }
}
