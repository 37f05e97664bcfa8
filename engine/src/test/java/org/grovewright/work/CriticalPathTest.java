package org.grovewright.work;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import org.grovewright.work.CriticalPath.Link;
import org.junit.jupiter.api.Test;

class CriticalPathTest {
  /**
   * Worked example of a project of 12 activities and 21 weeks with its table of ES, EF, LS, LF and
   * slack: quesba.com, question 796372, "Network diagram (AON)".
   */
  @Test
  void agreesWithAWorkedExample() {
    String names = "ABCDEFGHIJKL";
    double[] duration = {6, 3, 5, 2, 4, 3, 2, 3, 5, 4, 2, 3};
    String[] before = {"", "", "A", "", "C", "D", "BC", "G", "FG", "H", "EH", "K"};
    double[][] table = {
      {0, 6, 0, 6, 0},
      {0, 3, 8, 11, 8},
      {6, 11, 6, 11, 0},
      {0, 2, 11, 13, 11},
      {11, 15, 12, 16, 1},
      {2, 5, 13, 16, 11},
      {11, 13, 11, 13, 0},
      {13, 16, 13, 16, 0},
      {13, 18, 16, 21, 3},
      {16, 20, 17, 21, 1},
      {16, 18, 16, 18, 0},
      {18, 21, 18, 21, 0}
    };
    List<List<Link>> links = new ArrayList<>();
    for (String names1 : before) {
      links.add(names1.chars().mapToObj(c -> new Link(names.indexOf(c), 0)).toList());
    }
    CriticalPath path = new CriticalPath(duration, links);

    assertThat(path.length()).isEqualTo(21);
    for (int i = 0; i < table.length; i++) {
      assertThat(
              new double[] {
                path.earliestStart(i),
                path.earliestFinish(i),
                path.latestStart(i),
                path.latestFinish(i),
                path.slack(i)
              })
          .as("activity %s", names.charAt(i))
          .containsExactly(table[i]);
    }
  }

  /**
   * Instance j301_1 of PSPLIB (Kolisch and Sprecher, 1997): its file states a length of 38 where
   * only precedence binds ("MPM-Time").
   */
  @Test
  void agreesWithAPublishedInstance() {
    double[] duration = {
      0, 8, 4, 6, 3, 8, 5, 9, 2, 7, 9, 2, 6, 3, 9, 10, 6, 5, 3, 7, 2, 7, 2, 3, 3, 7, 8, 3, 7, 2, 2,
      0
    };
    int[][] successors = {
      {2, 3, 4},
      {6, 11, 15},
      {7, 8, 13},
      {5, 9, 10},
      {20},
      {30},
      {27},
      {12, 19, 27},
      {14},
      {16, 25},
      {20, 26},
      {14},
      {17, 18},
      {17},
      {25},
      {21, 22},
      {22},
      {20, 22},
      {24, 29},
      {23, 25},
      {28},
      {23},
      {24},
      {30},
      {30},
      {31},
      {28},
      {31},
      {32},
      {32},
      {32},
      {}
    };
    List<List<Link>> links = new ArrayList<>();
    for (int i = 0; i < duration.length; i++) {
      links.add(new ArrayList<>());
    }
    for (int i = 0; i < successors.length; i++) {
      for (int next : successors[i]) {
        links.get(next - 1).add(new Link(i, 0));
      }
    }
    assertThat(new CriticalPath(duration, links).length()).isEqualTo(38);
  }

  @Test
  void lagsLengthenThePath() {
    CriticalPath path =
        new CriticalPath(
            new double[] {2, 3, 4},
            List.of(List.of(), List.of(new Link(0, 5)), List.of(new Link(0, 0))));
    assertThat(path.length()).isEqualTo(10);
    assertThat(path.slack(0)).isZero();
    assertThat(path.slack(2)).isEqualTo(4);
  }

  @Test
  void refusesACircle() {
    List<List<Link>> links = List.of(List.of(new Link(1, 0)), List.of(new Link(0, 0)));
    assertThatThrownBy(() -> new CriticalPath(new double[] {1, 1}, links))
        .hasMessageContaining("circle");
  }
}
