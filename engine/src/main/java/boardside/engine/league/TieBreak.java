package boardside.engine.league;

import boardside.engine.rules.Word;
import java.util.List;

/** What tells players apart who have equally many league points. More is better in all of them but forfeits. */
public enum TieBreak implements Word {
    /** League points in the games among those who are equal. */
    HEAD_TO_HEAD,
    /** Matches in which more league points were taken than the other side took. */
    MATCH_WINS,
    /** Games won. */
    WINS,
    /** Points thrown less points thrown against. */
    DIFFERENCE,
    /** Points thrown. */
    THROWN,
    /** Games lost by forfeit: fewer is better. */
    FORFEITS;

    /** Head to head, then the difference, then points thrown. */
    public static final List<TieBreak> USUAL = List.of(HEAD_TO_HEAD, DIFFERENCE, THROWN);
}
