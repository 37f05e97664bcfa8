package org.grovewright;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaCall;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** The house keeps its shape: a pure engine, and faces that depend on it and never the reverse. */
class ArchitectureTest {
  private static final String ROOT = "org.grovewright.";

  /** Which subjects of the engine a subject may know, besides the model, catalogue and figures. */
  private static final Map<String, Set<String>> SUBJECTS =
      Map.ofEntries(
          Map.entry("advice", Set.of("water", "irrigation")),
          Map.entry("growth", Set.of()),
          Map.entry("layout", Set.of("growth")),
          Map.entry("ground", Set.of("growth", "layout")),
          Map.entry("hydraulics", Set.of()),
          Map.entry("water", Set.of("growth")),
          Map.entry("irrigation", Set.of("growth", "hydraulics", "layout", "trench", "water")),
          Map.entry("trench", Set.of("layout")),
          Map.entry("season", Set.of("irrigation", "hydraulics", "water")),
          Map.entry("storage", Set.of("irrigation", "water")),
          Map.entry("buying", Set.of()),
          Map.entry("trouble", Set.of("irrigation", "hydraulics")),
          Map.entry("work", Set.of("ground")));

  private static final Set<String> SHARED =
      Set.of("quantity", "model", "catalogue", "finding", "demand");

  private static final JavaClasses CLASSES =
      new ClassFileImporter()
          .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
          .importPackages("org.grovewright");

  private static String[] engine() {
    return Stream.concat(
            Stream.of("plan"), Stream.concat(SUBJECTS.keySet().stream(), SHARED.stream()))
        .map(name -> ROOT + name)
        .toArray(String[]::new);
  }

  @Test
  void theEngineKnowsNoFileNetworkDatabaseOrScreen() {
    noClasses()
        .that(resideInAnyPackage(engine()))
        .should()
        .dependOnClassesThat(
            resideInAnyPackage(
                    "java.io..", "java.nio..", "java.net..", "java.sql..", "java.awt..", "javax..")
                .and(
                    describe(
                        "other than Serializable",
                        c -> !c.getName().equals("java.io.Serializable"))))
        .check(CLASSES);
  }

  @Test
  void theEngineReadsNoClockChanceOrPlaceOfTheMachine() {
    Set<String> forbidden =
        Set.of(
            "now",
            "currentTimeMillis",
            "nanoTime",
            "systemDefault",
            "getDefault",
            "random",
            "getenv",
            "getProperty");
    DescribedPredicate<JavaCall<?>> impure =
        describe(
            "a call that reads the clock, chance or the machine",
            call ->
                call.getTargetOwner().getPackageName().startsWith("java.")
                    && (forbidden.contains(call.getName())
                        || call.getTargetOwner().getSimpleName().equals("Random")
                            && call.getName().equals("<init>")
                            && call.getTarget().getParameterTypes().isEmpty()));
    noClasses()
        .that(resideInAnyPackage(engine()))
        .should()
        .callCodeUnitWhere(describe(impure.getDescription(), impure::test))
        .check(CLASSES);
  }

  @Test
  void theEngineKnowsOnlyItselfAndTheGeometryLibrary() {
    String[] allowed =
        Stream.concat(Stream.of(engine()), Stream.of("java..", "org.locationtech.jts.."))
            .toArray(String[]::new);
    classes()
        .that(resideInAnyPackage(engine()))
        .should()
        .onlyDependOnClassesThat(resideInAnyPackage(allowed))
        .check(CLASSES);
  }

  @TestFactory
  List<DynamicTest> aSubjectKnowsOnlyTheSubjectsItNeeds() {
    return SUBJECTS.entrySet().stream()
        .sorted(Map.Entry.comparingByKey())
        .map(
            subject ->
                DynamicTest.dynamicTest(
                    subject.getKey(),
                    () -> {
                      String[] others =
                          SUBJECTS.keySet().stream()
                              .filter(other -> !other.equals(subject.getKey()))
                              .filter(other -> !subject.getValue().contains(other))
                              .map(other -> ROOT + other)
                              .toArray(String[]::new);
                      noClasses()
                          .that(resideInAPackage(ROOT + subject.getKey()))
                          .should()
                          .dependOnClassesThat(resideInAnyPackage(others))
                          .check(CLASSES);
                    }))
        .toList();
  }

  @Test
  void noPackagesGoInACircle() {
    slices().matching("org.grovewright.(**)").should().beFreeOfCycles().check(CLASSES);
  }
}
