package boardside.app.practice;

import boardside.engine.rules.Word;

/** What an account may do in hosted mode, beside recording for its own players. */
public enum Role implements Word {
    /** Nothing else. */
    PLAYER,
    /** Run leagues. */
    ORGANISER,
    /** Run leagues; invite, set roles, close accounts. Sees nobody else's practice. */
    HOST;

    /** Whether this role may do what another may. */
    public boolean covers(Role other) {
        return compareTo(other) >= 0;
    }
}
