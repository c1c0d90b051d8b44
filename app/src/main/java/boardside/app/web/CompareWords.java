package boardside.app.web;

import boardside.app.report.DataTable;
import boardside.app.report.Picture;
import boardside.app.report.Pictures;
import boardside.app.report.SkillPictures;
import boardside.engine.skill.ComparisonAnswer.Comparison;
import boardside.engine.skill.ComparisonAnswer.Group;
import boardside.engine.skill.Interval;
import boardside.engine.skill.Trait;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Comparisons in words and pictures. */
final class CompareWords {
    private static final int MOST_GRID_COLUMNS = 3;

    private final Texts texts;

    CompareWords(Texts texts) {
        this.texts = texts;
    }

    List<ComparePage.Way> ways(Comparison comparison) {
        if (comparison.groups().size() < 2) {
            return List.of();
        }
        return comparison.groups().stream()
                .map(group -> new ComparePage.Way(name(comparison, group), says(group)))
                .toList();
    }

    private String says(Group group) {
        String settle = group.roundsToSettle() == 0
                ? texts.of("compare.settled")
                : group.roundsToSettle() > 1000
                        ? texts.of("compare.settle.many")
                        : texts.of("compare.settle", group.roundsToSettle());
        return texts.of(
                        "compare.way",
                        Numbers.one(group.pointsPerRound().estimate()),
                        Numbers.one(group.pointsPerRound().low()),
                        Numbers.one(group.pointsPerRound().high()),
                        group.throwsCounted(),
                        Numbers.inHundred(group.probabilityBest()),
                        Numbers.two(group.expectedLoss()))
                + " " + settle;
    }

    String name(Comparison comparison, Group group) {
        List<String> words = new ArrayList<>();
        for (int i = 0; i < comparison.by().size(); i++) {
            words.add(word(comparison.by().get(i), group.key().get(i)));
        }
        return String.join(", ", words);
    }

    String word(Trait trait, String word) {
        return trait == Trait.BAG ? word : texts.of(trait.word() + "." + word);
    }

    /** Each way with its numbers. */
    DataTable table(Comparison comparison) {
        List<List<String>> rows = comparison.groups().stream()
                .map(group -> List.of(
                        name(comparison, group),
                        String.valueOf(group.throwsCounted()),
                        Numbers.one(group.pointsPerRound().estimate()),
                        Numbers.range(group.pointsPerRound()),
                        Numbers.inHundred(group.probabilityBest()),
                        Numbers.two(group.expectedLoss())))
                .toList();
        return new DataTable(
                List.of(
                        texts.of("compare.table.way"),
                        texts.of("form.table.bags"),
                        texts.of("form.table.ppr"),
                        texts.of("form.table.range"),
                        texts.of("compare.table.best"),
                        texts.of("compare.table.loss")),
                rows);
    }

    Picture picture(Comparison comparison) {
        DataTable data = table(comparison);
        List<String> columns = comparison.by().size() == 2 ? keys(comparison, 1) : List.of();
        if (!columns.isEmpty() && columns.size() <= MOST_GRID_COLUMNS) {
            List<String> first = keys(comparison, 0);
            List<List<@Nullable Interval>> cells = new ArrayList<>();
            for (String row : first) {
                List<@Nullable Interval> line = new ArrayList<>();
                for (String column : columns) {
                    line.add(comparison.groups().stream()
                            .filter(group -> group.key().equals(List.of(row, column)))
                            .map(Group::pointsPerRound)
                            .findFirst()
                            .orElse(null));
                }
                cells.add(line);
            }
            return SkillPictures.grid(
                    texts.of("compare.grid"),
                    texts.of(
                            "compare.grid.about",
                            name(comparison, comparison.groups().get(0))),
                    data,
                    columns.stream()
                            .map(column -> word(comparison.by().get(1), column))
                            .toList(),
                    first,
                    cells);
        }
        return Pictures.ranges(
                texts.of("compare.picture"),
                texts.of("compare.picture.about", comparison.groups().size()),
                data,
                comparison.groups().stream()
                        .map(group -> new Pictures.Named(name(comparison, group), group.pointsPerRound()))
                        .toList());
    }

    private static List<String> keys(Comparison comparison, int at) {
        return List.copyOf(comparison.groups().stream()
                .map(group -> group.key().get(at))
                .collect(Collectors.toCollection(LinkedHashSet::new)));
    }
}
