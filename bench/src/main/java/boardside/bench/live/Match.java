package boardside.bench.live;

/** A match under way: when each round of it was sent, and how long each took to reach each of its spectators. */
final class Match {
    private final String path;
    private final Times reached;
    private final long[] sent;
    private int count;

    /**
     * @param path of the page for spectators
     * @param most rounds of both sides together
     * @param reached told how long a round took to a spectator
     */
    Match(String path, int most, Times reached) {
        this.path = path;
        this.reached = reached;
        this.sent = new long[most];
    }

    String path() {
        return path;
    }

    /** A round is being sent. */
    synchronized void sending(long now) {
        sent[count++] = now;
    }

    /** A spectator who had so many rounds has so many now. */
    void seen(int before, int after, long now) {
        synchronized (this) {
            for (int i = before; i < Math.min(after, count); i++) {
                reached.add(now - sent[i]);
            }
        }
    }
}
