package boardside.engine.league;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * A play-off bracket as far as it has been played: who loses is out. Immutable.
 *
 * <p>Entrants are seeds 1 (the best) to n. They fill a bracket of the next power of two in the plain standard order: from
 * one match of 1 against 2 on, each seed s of a bracket of half the size is followed by the seed that adds up with it to the
 * size plus one, so that 1 and 2 can meet in the last match only, and the better seed meets the worse one if all goes by
 * seeds. Places above n are byes, which so fall to the best seeds.
 *
 * @param entrants 2 to {@value #MOST}
 * @param winners seed of the winner by match; what follows from byes is not in it
 */
public record Bracket(int entrants, Map<Match, Integer> winners) {
    /** The most entrants. */
    public static final int MOST = 1024;

    /**
     * Checks the winners; map copied.
     *
     * @throws IllegalArgumentException if there are too few or too many entrants, or somebody won a match they are not in
     */
    public Bracket {
        if (!(entrants >= 2 && entrants <= MOST)) {
            throw new IllegalArgumentException("a bracket has 2 to " + MOST + " entrants, not " + entrants);
        }
        winners = Map.copyOf(winners);
        // In the order of rounds, so that whoever is refused is refused in the first match that is wrong.
        for (Map.Entry<Match, Integer> won : new TreeMap<>(winners).entrySet()) {
            Match match = won.getKey();
            if (match.round() > rounds(entrants) || match.number() > size(entrants) >> match.round()) {
                throw new IllegalArgumentException("a bracket of " + entrants + " has no " + match);
            }
            Sides sides = sides(entrants, winners, match);
            if (!sides.ready() || !sides.has(won.getValue())) {
                throw new IllegalArgumentException(
                        "seed " + won.getValue() + " cannot have won " + match + ": " + sides + " meet there");
            }
        }
    }

    /** A bracket in which nothing has been played. */
    public static Bracket of(int entrants) {
        return new Bracket(entrants, Map.of());
    }

    /**
     * A match of a bracket.
     *
     * @param round 1 for the first
     * @param number within the round from 1, from the top
     */
    public record Match(int round, int number) implements Comparable<Match> {
        /**
         * Checks the numbers.
         *
         * @throws IllegalArgumentException if one is below 1
         */
        public Match {
            if (!(round >= 1 && number >= 1)) {
                throw new IllegalArgumentException(
                        "rounds and matches are numbered from 1, not " + round + " and " + number);
            }
        }

        @Override
        public int compareTo(Match other) {
            int byRound = Integer.compare(round, other.round);
            return byRound != 0 ? byRound : Integer.compare(number, other.number);
        }

        @Override
        public String toString() {
            return "match " + number + " of round " + round;
        }
    }

    /** Who stands at one side of a match. */
    public sealed interface Place {
        /** An entrant. */
        record Seed(int seed) implements Place {}

        /** Nobody: the other side goes on without playing. */
        record Bye() implements Place {}

        /** The winner of a match that is still to be played. */
        record WinnerOf(Match match) implements Place {}
    }

    /** Both sides of a match, the upper one first. */
    public record Sides(Place upper, Place lower) {
        /** Whether both are known entrants. */
        public boolean ready() {
            return upper instanceof Place.Seed && lower instanceof Place.Seed;
        }

        /** Whether a seed is one of the two. */
        public boolean has(int seed) {
            return upper.equals(new Place.Seed(seed)) || lower.equals(new Place.Seed(seed));
        }
    }

    /** Places of the whole bracket, a power of two. */
    public int size() {
        return size(entrants);
    }

    private static int size(int entrants) {
        return entrants <= 2 ? 2 : Integer.highestOneBit(entrants - 1) << 1;
    }

    /** How many rounds it takes. */
    public int rounds() {
        return rounds(entrants);
    }

    private static int rounds(int entrants) {
        return Integer.numberOfTrailingZeros(size(entrants));
    }

    /**
     * The seeds of a full bracket from the top.
     *
     * @param size a power of two, 2 or more
     */
    public static List<Integer> order(int size) {
        List<Integer> order = List.of(1, 2);
        while (order.size() < size) {
            List<Integer> next = new ArrayList<>();
            for (int seed : order) {
                next.add(seed);
                next.add(2 * order.size() + 1 - seed);
            }
            order = next;
        }
        return order;
    }

    /** Who meets in a match. */
    public Sides sides(Match match) {
        return sides(entrants, winners, match);
    }

    private static Sides sides(int entrants, Map<Match, Integer> winners, Match match) {
        return new Sides(
                place(entrants, winners, match.round(), 2 * match.number() - 1),
                place(entrants, winners, match.round(), 2 * match.number()));
    }

    private static Place place(int entrants, Map<Match, Integer> winners, int round, int slot) {
        if (round == 1) {
            int seed = order(size(entrants)).get(slot - 1);
            return seed > entrants ? new Place.Bye() : new Place.Seed(seed);
        }
        Match before = new Match(round - 1, slot);
        Integer winner = winners.get(before);
        if (winner != null) {
            return new Place.Seed(winner);
        }
        Sides sides = sides(entrants, winners, before);
        return sides.lower() instanceof Place.Bye
                ? sides.upper()
                : sides.upper() instanceof Place.Bye ? sides.lower() : new Place.WinnerOf(before);
    }

    /** The matches of a round in which two meet or will meet, from the top; byes are left out. */
    public List<Match> matches(int round) {
        List<Match> matches = new ArrayList<>();
        for (int number = 1; number <= size() >> round; number++) {
            Match match = new Match(round, number);
            Sides sides = sides(match);
            if (!(sides.upper() instanceof Place.Bye || sides.lower() instanceof Place.Bye)) {
                matches.add(match);
            }
        }
        return matches;
    }

    /** The matches that can be played now, those of earlier rounds first. */
    public List<Match> ready() {
        List<Match> ready = new ArrayList<>();
        for (int round = 1; round <= rounds(); round++) {
            for (Match match : matches(round)) {
                if (!winners.containsKey(match) && sides(match).ready()) {
                    ready.add(match);
                }
            }
        }
        return ready;
    }

    /**
     * The bracket after a match. A winner told anew takes back the later matches of whoever is out by it.
     *
     * @throws IllegalArgumentException if the match is not ready or the seed not in it
     */
    public Bracket with(Match match, int winner) {
        Map<Match, Integer> after = new TreeMap<>(winners);
        Integer before = after.put(match, winner);
        if (before != null && before != winner) {
            int number = match.number();
            for (int round = match.round() + 1; round <= rounds(); round++) {
                number = (number + 1) / 2;
                after.remove(new Match(round, number));
            }
        }
        return new Bracket(entrants, after);
    }

    /** Who won the last match. */
    public Optional<Integer> champion() {
        return Optional.ofNullable(winners.get(new Match(rounds(), 1)));
    }
}
