package boardside.engine.skill;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** The words met for one way in which throws differ, numbered in order, with the bags thrown with each. */
final class Levels {
    private final List<String> words = new ArrayList<>();
    private final Map<String, Integer> numbers = new HashMap<>();
    private final List<Long> thrown = new ArrayList<>();

    void add(String word, long bags) {
        Integer number = numbers.get(word);
        if (number == null) {
            numbers.put(word, words.size());
            words.add(word);
            thrown.add(bags);
        } else {
            thrown.set(number, thrown.get(number) + bags);
        }
    }

    int size() {
        return words.size();
    }

    String word(int number) {
        return words.get(number);
    }

    /** The number of a word, or -1 if it was not met. */
    int number(String word) {
        return numbers.getOrDefault(word, -1);
    }

    long thrown(int number) {
        return thrown.get(number);
    }

    /** The word that other levels are measured against: the wanted one if met, else the one thrown most. */
    int reference(String wanted) {
        int number = number(wanted);
        for (int i = 0; number < 0 && i < size(); i++) {
            if (thrown(i) == thrown.stream().mapToLong(Long::longValue).max().orElse(0)) {
                number = i;
            }
        }
        return number;
    }
}
