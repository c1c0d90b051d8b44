package boardside.app.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What is shipped, and that nothing has a licence that was not looked at. Offline, Maven makes no bill of materials: then this is skipped. */
class LicencesCommandTest {
    /** Licences that let the program be given on as it is; of several that a library offers, one of these is enough. */
    private static final Set<String> ALLOWED = Set.of(
            "Apache-2.0",
            "MIT",
            "MIT-0",
            "BSD-2-Clause",
            "BSD-3-Clause",
            "EPL-1.0",
            "EPL-2.0",
            "LGPL-2.1-or-later",
            // The MIT licence by another name.
            "Bouncy Castle Licence");

    /** Libraries whose makers name their licence loosely, with what it is by the text they ship. */
    private static final Map<String, String> BY_THEIR_TEXT = Map.of(
            "org.jline:jline-terminal", "BSD-3-Clause",
            "org.jline:jline-native", "BSD-3-Clause",
            // Nothing of it is shipped but the DejaVu fonts, which have licences of their own.
            "net.sf.jasperreports:jasperreports-fonts", "Bitstream Vera and Arev");

    @BeforeEach
    void aBillWasMade() {
        assumeThat(LicencesCommandTest.class.getResource("/META-INF/sbom/boardside.cdx.json"))
                .as("Maven makes the bill of materials only online")
                .isNotNull();
    }

    @Test
    void everyLibraryHasALicenceThatWasLookedAt() {
        List<LicencesCommand.Library> libraries = LicencesCommand.libraries(LicencesCommand.bill());
        assertThat(libraries)
                .hasSizeGreaterThan(20)
                .extracting(LicencesCommand.Library::name)
                .contains("io.javalin:javalin", "org.xerial:sqlite-jdbc")
                .noneMatch(name -> name.contains("junit") || name.contains("playwright"));
        assertThat(libraries)
                .filteredOn(library -> !BY_THEIR_TEXT.containsKey(library.name()))
                .allSatisfy(library -> assertThat(Collections.disjoint(library.licences(), ALLOWED))
                        .as(library.toString())
                        .isFalse());
    }

    @Test
    void namesLibrariesAndLicences() {
        Ran ran = Ran.of("licences");
        assertThat(ran.status()).isZero();
        assertThat(ran.out()).contains("io.javalin:javalin ", ": Apache-2.0\n", "DejaVu fonts");
        assertThat(Ran.of("licences", "--json").out()).contains("\"bomFormat\":\"CycloneDX\"");
    }
}
