package boardside.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.json.Json;
import boardside.app.practice.Moment;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The pages' own scripts, run where they will run: in the browser. */
class ScriptsTest extends Browser {
    @BeforeEach
    void onOurOwnPage() {
        page.navigate(url("/"));
    }

    /** Cases made from {@code boardside.engine.rules} by ScoringVectors in the engine's tests. */
    @Test
    void scoringAgreesWithTheRules() throws Exception {
        String vectors = Files.readString(Path.of("src", "test", "resources", "scoring-vectors.json"));
        JsonNode cases = Json.MAPPER.readTree(vectors);
        Object faults = page.evaluate("""
                async (text) => {
                  const { finishes, mineNext, play, points, start } = await import('/static/js/scoring.js');
                  const cases = JSON.parse(text);
                  const faults = [];
                  const same = (what, is, should) => {
                    if (JSON.stringify(is) !== JSON.stringify(should)) faults.push(what + ': ' + JSON.stringify(is));
                  };
                  same('finishes', finishes().map((f) => ({ ...f, points: points(f) })), cases.finishes);
                  for (const { meFirst, mineNext: should } of cases.turns) {
                    same('turns', should.map((_, i) => mineNext(meFirst, i)), should);
                  }
                  for (const { meFirst, ghost, rounds, ...rules } of cases.games) {
                    let game = start(rules, meFirst);
                    for (const [mine, theirs, ...should] of rounds) {
                      game = play(game, mine, theirs);
                      same(JSON.stringify(rules) + ' ' + mine + '-' + theirs,
                        [game.mine, game.theirs, game.meFirst, game.result], should);
                    }
                  }
                  return faults;
                }
                """, vectors);
        assertThat(cases.get("games")).hasSizeGreaterThan(50);
        assertThat((List<?>) faults).isEmpty();
    }

    /** RFC 9562, section 5.7: version 7, variant 10, the first 48 bits the Unix time in milliseconds. */
    @Test
    void idsAreUuidsOfVersionSevenThatSortAsMade() {
        Object made = page.evaluate("""
                async () => {
                  const { uuidv7 } = await import('/static/js/ids.js');
                  const ids = [uuidv7('', 1700000000000)];
                  for (let i = 0; i < 500; i++) ids.push(uuidv7('', 1600000000000));
                  ids.push(uuidv7('019b0000-0000-7fff-bfff-ffffffffffff', 1700000000000));
                  return ids;
                }
                """);
        List<String> ids = ((List<?>) made).stream().map(String.class::cast).toList();
        assertThat(ids).isSorted().doesNotHaveDuplicates();
        assertThat(ids).allSatisfy(id -> {
            assertThat(UUID.fromString(id).version()).isEqualTo(7);
            assertThat(UUID.fromString(id).variant()).isEqualTo(2);
        });
        assertThat(UUID.fromString(ids.get(0)).getMostSignificantBits() >>> 16).isEqualTo(1_700_000_000_000L);
        assertThat(ids.get(ids.size() - 1)).isGreaterThan("019b0000-0000-7fff-bfff-ffffffffffff");
    }

    @Test
    void instantsAreIsoWithOffset() {
        Object now = page.evaluate("async () => (await import('/static/js/ids.js')).isoNow(new Date(1700000000000))");
        assertThat(Moment.of((String) now).millis()).isEqualTo(1_700_000_000_000L);
    }
}
