package boardside;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideOutsideOfPackages;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.GeneralCodingRules.ACCESS_STANDARD_STREAMS;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaCall;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaPackage;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.io.Serializable;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.NullMarked;

/** Which way the arrows point, as the map in docs/architecture.md draws them. */
@AnalyzeClasses(packages = "boardside", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {
    /** Packages of the engine, with those each may know. */
    private static final Map<String, Set<String>> ENGINE = Map.of(
            "rules", Set.of(),
            "linear", Set.of(),
            "odds", Set.of("rules"),
            "skill", Set.of("odds", "rules", "linear"),
            "trial", Set.of("skill", "odds", "rules"),
            "physics", Set.of("rules", "linear"),
            "tactics", Set.of("physics", "odds", "rules", "linear"),
            "league", Set.of("odds", "rules"),
            "plan", Set.of("rules", "odds", "skill", "trial", "physics", "tactics", "league"));

    private static final String[] SQL = {
        "java.sql..", "javax.sql..", "org.jdbi..", "com.zaxxer..", "org.flywaydb..", "org.sqlite..", "org.postgresql.."
    };

    @ArchTest
    static final ArchRule engineKnowsNothingOfTheApp = noClasses()
            .that()
            .resideInAPackage("boardside.engine..")
            .should()
            .dependOnClassesThat()
            .resideInAPackage("boardside.app..");

    @ArchTest
    static final ArchRule engineDoesNoInputOrOutput = noClasses()
            .that()
            .resideInAPackage("boardside.engine..")
            .should()
            .dependOnClassesThat(resideInAnyPackage(
                            "java.io..", "java.nio..", "java.net..", "java.sql..", "java.util.logging..", "org.slf4j..")
                    .and(DescribedPredicate.not(JavaClass.Predicates.type(Serializable.class))));

    @ArchTest
    static final ArchRule engineAsksNoClockAndNoGlobalRandom = noClasses()
            .that()
            .resideInAPackage("boardside.engine..")
            .should()
            .callCodeUnitWhere(new DescribedPredicate<JavaCall<?>>("a clock or global random is asked") {
                @Override
                public boolean test(JavaCall<?> call) {
                    String owner = call.getTargetOwner().getName();
                    String name = call.getTarget().getName();
                    return name.equals("now") && owner.startsWith("java.time.")
                            || owner.equals("java.time.Clock") && name.startsWith("system")
                            || owner.equals("java.time.InstantSource") && name.equals("system")
                            || owner.equals("java.lang.System")
                                    && !name.equals("arraycopy")
                                    && !name.equals("identityHashCode")
                            || owner.equals("java.lang.Math") && name.equals("random")
                            || owner.equals("java.util.UUID") && name.equals("randomUUID")
                            || owner.equals("java.util.concurrent.ThreadLocalRandom")
                            || owner.equals("java.security.SecureRandom")
                            || owner.equals("java.util.Random")
                                    && name.equals("<init>")
                                    && call.getTarget().getRawParameterTypes().isEmpty();
                }
            });

    @ArchTest
    static void enginePackagesKnowOnlyThoseBelow(JavaClasses all) {
        ENGINE.forEach((name, known) -> {
            String[] allowed = Stream.concat(known.stream(), Stream.of(name))
                    .map(concept -> "boardside.engine." + concept + "..")
                    .toArray(String[]::new);
            noClasses()
                    .that()
                    .resideInAPackage("boardside.engine." + name + "..")
                    .should()
                    .dependOnClassesThat(resideInAPackage("boardside.engine..").and(resideOutsideOfPackages(allowed)))
                    .allowEmptyShould(true)
                    .check(all);
        });
    }

    @ArchTest
    static void everyPackageOfTheEngineHasItsPlace(JavaClasses all) {
        List<String> concepts = all.stream()
                .map(JavaClass::getPackageName)
                .filter(name -> name.startsWith("boardside.engine."))
                .map(name -> name.split("\\.")[2])
                .distinct()
                .toList();
        assertThat(ENGINE.keySet()).containsAll(concepts);
    }

    @ArchTest
    static final ArchRule sqlStaysInTheStore = noClasses()
            .that()
            .resideOutsideOfPackage("boardside.app.store..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(SQL);

    @ArchTest
    static final ArchRule edgesReachTheStoreThroughRecord = classes()
            .that()
            .resideInAPackage("boardside.app.store..")
            .should()
            .onlyHaveDependentClassesThat()
            .resideInAnyPackage("boardside.app.store..", "boardside.app.record..", "boardside.app.account..");

    @ArchTest
    static final ArchRule valuesKnowNothingOfTheApp = noClasses()
            .that()
            .resideInAPackage("boardside.app.practice..")
            .should()
            .dependOnClassesThat(
                    resideInAPackage("boardside.app..").and(resideOutsideOfPackages("boardside.app.practice..")));

    @ArchTest
    static final ArchRule appPackagesHaveNoCycles =
            slices().matching("boardside.app.(*)..").should().beFreeOfCycles();

    @ArchTest
    static final ArchRule enginePackagesHaveNoCycles =
            slices().matching("boardside.engine.(*)..").should().beFreeOfCycles();

    @ArchTest
    static final ArchRule onlyTheCommandLinePrints =
            noClasses().that().resideOutsideOfPackage("boardside.app.cli..").should(ACCESS_STANDARD_STREAMS);

    @ArchTest
    static void everyPackageSaysWhatMayBeNull(JavaClasses all) {
        Set<String> unmarked = all.stream()
                .map(JavaClass::getPackage)
                .filter(javaPackage -> !javaPackage.getName().startsWith("boardside.app.page"))
                .filter(javaPackage -> !javaPackage.isAnnotatedWith(NullMarked.class))
                .map(JavaPackage::getName)
                .collect(Collectors.toSet());
        assertThat(unmarked).isEmpty();
    }
}
