package boardside.app.web;

import boardside.app.practice.DayBags;
import boardside.app.practice.Player;
import boardside.app.practice.Run;
import boardside.app.practice.TrialPlan;
import boardside.app.record.Deeds;
import boardside.app.record.Journal;
import boardside.app.record.Records;
import boardside.app.record.RunDetail;
import boardside.app.record.Throws;
import boardside.app.record.TrialDetail;
import boardside.app.record.TryRates;
import boardside.app.report.DataTable;
import boardside.app.report.Picture;
import boardside.app.report.Report;
import boardside.app.report.Report.Section;
import boardside.engine.physics.Range;
import boardside.engine.physics.SpeedSheet;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Face;
import boardside.engine.rules.Word;
import boardside.engine.skill.ComparisonAnswer;
import boardside.engine.skill.ComparisonAnswer.Comparison;
import boardside.engine.skill.FormAnswer;
import boardside.engine.skill.FormAnswer.Form;
import boardside.engine.skill.Skill;
import boardside.engine.skill.Trait;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Reports, put together from the answers that pages and commands give one by one. */
public final class Reports {
    // As much as fits a page of the match card.
    private static final int MOST_SHOTS = 6;
    private static final int MOST_PREFERENCES = 3;
    private static final int MOST_BAGS = 6;
    private static final int MOST_WAYS_ON_CARD = 4;
    private static final int MOST_WAYS = 8;
    private static final int MOST_BESTS = 8;
    private static final int TREND_DAYS = 30;
    private static final int SEASON_DAYS = 365;
    private static final int TOTAL_ROUNDS = 10;
    private static final String NONE = "\u2013";

    private final Records records;
    private final Texts texts;
    private final SkillOnDay skills;
    private final CompareWords compared;

    /** What a player's records say on a day, that day included. */
    public interface SkillOnDay {
        Skill skill(int player, LocalDate day);
    }

    /** Reports there are. */
    public enum Kind implements Word {
        /** What to throw on a day that counts. */
        CARD,
        /** Which bag set is better, and how that is known. */
        BAGS,
        /** A year of practice. */
        SEASON,
        /** One day of it. */
        SESSION
    }

    /** Of a store's records, in the words of a language. */
    public Reports(Records records, Texts texts, SkillOnDay skills) {
        this.records = records;
        this.texts = texts;
        this.skills = skills;
        this.compared = new CompareWords(texts);
    }

    /**
     * A report as of a day.
     *
     * @param day the last day whose records count; of a session, the day of it
     * @param units of lengths: in or cm
     * @return empty where there is nothing to report: no counted records, or nothing thrown that day
     */
    public Optional<Report> of(Kind kind, Player player, LocalDate day, String units) {
        Look look = Look.of("auto." + units + ".right");
        return switch (kind) {
            case CARD -> card(player, day, look);
            case BAGS -> bags(player, day, look);
            case SEASON -> season(player, day);
            case SESSION -> session(player, day);
        };
    }

    /** The last day on which anything was thrown up to a day, of the year before it. */
    public Optional<LocalDate> lastDay(Player player, LocalDate upTo) {
        List<DayBags> days = records.deeds().days(player.id(), upTo.minusDays(SEASON_DAYS), upTo);
        return days.isEmpty()
                ? Optional.empty()
                : Optional.of(LocalDate.parse(days.get(days.size() - 1).day()));
    }

    private Report report(Kind kind, Player player, String when, List<Section> sections, String... notes) {
        List<String> said = new ArrayList<>();
        for (String note : notes) {
            said.add(texts.of(note));
        }
        said.add(texts.of("report.ranges"));
        return new Report(
                texts.of("report." + kind.word()),
                texts.of("report.about", player.name(), when),
                sections,
                said,
                kind == Kind.CARD);
    }

    // The match card: what a player wants to know before the first bag of a tournament.

    private Optional<Report> card(Player player, LocalDate day, Look look) {
        Skill skill = skills.skill(player.id(), day);
        if (!(skill.form(TREND_DAYS) instanceof Form form)) {
            return Optional.empty();
        }
        List<Section> sections = new ArrayList<>();
        sections.add(section("report.ways", skill.compare(List.of(Trait.BAG, Trait.APPROACH)), MOST_WAYS_ON_CARD));
        sections.add(conditions(skill));
        sections.add(new Section(
                texts.of("report.level"),
                List.of(
                        texts.of(
                                "report.level.says",
                                Numbers.one(form.level().low()),
                                Numbers.one(form.level().high()),
                                Numbers.one(form.level().estimate())),
                        form.sentence(),
                        skill.usual(TOTAL_ROUNDS).sentence()),
                null,
                null));
        sections.add(shots(player, day));
        sections.add(landing(player, day, look));
        return Optional.of(report(Kind.CARD, player, texts.day(day), sections, "report.card.note"));
    }

    private Section conditions(Skill skill) {
        ComparisonAnswer answer = skill.compare(List.of(Trait.CONDITIONS));
        List<String> sentences = new ArrayList<>(List.of(answer.sentence()));
        sentences.add(texts.of("report.conditions.note"));
        return new Section(
                texts.of("report.conditions"),
                sentences,
                answer instanceof Comparison comparison && comparison.groups().size() > 1
                        ? compared.table(comparison)
                        : null,
                null);
    }

    /** A comparison with its picture, and the numbers of its best ways. */
    private Section section(String heading, ComparisonAnswer answer, int most) {
        DataTable table = null;
        Picture picture = null;
        if (answer instanceof Comparison comparison && comparison.groups().size() > 1) {
            DataTable all = compared.table(comparison);
            table = new DataTable(
                    all.heads(), all.rows().subList(0, Math.min(most, all.rows().size())));
            picture = compared.picture(comparison);
        }
        return new Section(texts.of(heading), List.of(answer.sentence()), table, picture);
    }

    private Section shots(Player player, LocalDate day) {
        TryRates.Answer answer = TryRates.of(records, player.id(), Drill.SITUATION, day, Set.of());
        if (answer.rows().isEmpty()) {
            return new Section(texts.of("report.shots"), List.of(texts.of("report.shots.none")), null, null);
        }
        Map<String, String> names = new LinkedHashMap<>();
        records.bags(player.id()).forEach(bag -> names.put(bag.id(), bag.name()));
        TryWords words = new TryWords(texts, records.situations(player.id()), names);
        List<List<String>> rows = answer.rows().stream()
                .limit(MOST_SHOTS)
                .map(row -> List.of(
                        words.question(Drill.SITUATION, row),
                        words.way(row),
                        texts.of("report.of", row.worked(), row.tries()),
                        TryWords.rate(row.rate())))
                .toList();
        return new Section(
                texts.of("report.shots"),
                answer.preferences().stream()
                        .limit(MOST_PREFERENCES)
                        .map(preference -> words.preference(Drill.SITUATION, answer, preference))
                        .toList(),
                new DataTable(
                        List.of(
                                texts.of("report.shots.situation"),
                                texts.of("report.shots.shot"),
                                texts.of("rates.worked"),
                                texts.of("rates.rate")),
                        rows),
                null);
    }

    private Section landing(Player player, LocalDate day, Look look) {
        Throws all = Throws.of(records, player.id(), day);
        List<List<String>> rows = new ArrayList<>();
        boolean steeper = false;
        for (int i = 0; i < Math.min(MOST_BAGS, all.groups().size()); i++) {
            SpeedSheet.Sheet sheet = all.groups().get(i).sheet();
            rows.add(List.of(
                    name(all.groups().get(i)),
                    length(look, sheet.usual().slide()),
                    length(look, sheet.slower().landing()),
                    length(look, sheet.usual().landing()),
                    length(look, sheet.faster().landing())));
            steeper |= sheet.faster().landing().estimate() < 0
                    || sheet.usual().landing().estimate() < 0
                    || sheet.slower().landing().estimate() < 0;
        }
        List<String> sentences = new ArrayList<>();
        sentences.add(texts.of("report.landing.about", texts.of("throws.unit." + look.units())));
        if (steeper) {
            sentences.add(texts.of("report.landing.steeper", NONE));
        }
        if (!all.recorded()) {
            sentences.add(texts.of("throws.believed"));
        }
        return new Section(
                texts.of("report.landing"),
                sentences,
                new DataTable(
                        List.of(
                                texts.of("throws.which"),
                                texts.of("report.landing.slide"),
                                texts.of("report.landing.slower"),
                                texts.of("report.landing.usual"),
                                texts.of("report.landing.faster")),
                        rows),
                null);
    }

    private String name(Throws.Group group) {
        String name = group.name().isEmpty() ? texts.of("throws.unnamed") : group.name();
        Face face = group.key().face();
        return face == null ? name : texts.of("throws.name." + face.word(), name);
    }

    private static String length(Look look, Range inches) {
        double per = Units.perInch(look);
        return inches.estimate() < 0
                ? NONE
                : Math.round(per * inches.estimate()) + " (" + Math.round(per * Math.max(0, inches.low())) + "\u2013"
                        + Math.round(per * inches.high()) + ")";
    }

    // The bag report: method, results and what they do not say.

    private Optional<Report> bags(Player player, LocalDate day, Look look) {
        Skill skill = skills.skill(player.id(), day);
        ComparisonAnswer byBag = skill.compare(List.of(Trait.BAG));
        if (!(byBag instanceof Comparison bags)) {
            return Optional.empty();
        }
        List<Section> sections = new ArrayList<>();
        sections.add(new Section(
                texts.of("report.method"),
                List.of(
                        texts.of(
                                "report.method.data",
                                bags.groups().size(),
                                bags.groups().stream()
                                        .mapToLong(ComparisonAnswer.Group::throwsCounted)
                                        .sum()),
                        texts.of("report.method.model"),
                        texts.of("report.method.verdict")),
                null,
                null));
        sections.add(section("report.bags.result", bags, Integer.MAX_VALUE));
        List<String> ways = compared.ways(bags).stream()
                .map(way -> texts.of("report.bags.way", way.name(), way.says()))
                .toList();
        if (!ways.isEmpty()) {
            sections.add(new Section(texts.of("report.bags.each"), ways, null, null));
        }
        sections.add(section("report.ways", skill.compare(List.of(Trait.BAG, Trait.APPROACH)), MOST_WAYS));
        sections.add(section("report.faces", skill.compare(List.of(Trait.FACE)), MOST_WAYS));
        sections.add(trials(player));
        sections.add(landing(player, day, look));
        return Optional.of(report(Kind.BAGS, player, texts.day(day), sections, "report.bags.note"));
    }

    private Section trials(Player player) {
        List<String> said = new ArrayList<>();
        for (TrialDetail trial : records.trials().all(player.id())) {
            TrialPlan plan = trial.plan();
            if (!plan.deleted()) {
                said.add(texts.of("report.trial", plan.name(), trial.state().sentence()));
            }
        }
        return new Section(
                texts.of("report.trials"), said.isEmpty() ? List.of(texts.of("report.trials.none")) : said, null, null);
    }

    // The season report: a year up to the day.

    private Optional<Report> season(Player player, LocalDate day) {
        LocalDate from = day.minusDays(SEASON_DAYS - 1L);
        List<DayBags> days = records.deeds().days(player.id(), from, day);
        Skill skill = skills.skill(player.id(), day);
        FormAnswer form = skill.form(SEASON_DAYS);
        if (days.isEmpty() || !(form instanceof Form)) {
            return Optional.empty();
        }
        List<Section> sections = new ArrayList<>();
        sections.add(new Section(
                texts.of("report.season.form"),
                List.of(form.sentence(), skill.usual(TOTAL_ROUNDS).sentence()),
                null,
                new FormOverTime(texts).of(skill, day, SEASON_DAYS)));
        sections.add(months(days));
        sections.add(section("report.bags.result", skill.compare(List.of(Trait.BAG)), MOST_WAYS));
        sections.add(new Section(
                texts.of("report.season.swing"), List.of(skill.swing().sentence()), null, null));
        List<List<String>> bests = records.deeds().bests(player.id()).stream()
                .filter(best -> best.held().day().compareTo(from.toString()) >= 0
                        && best.held().day().compareTo(day.toString()) <= 0)
                .limit(MOST_BESTS)
                .map(this::best)
                .toList();
        if (!bests.isEmpty()) {
            sections.add(new Section(
                    texts.of("report.season.bests"),
                    List.of(),
                    new DataTable(
                            List.of(
                                    texts.of("report.season.best"),
                                    texts.of("card.table.result"),
                                    texts.of("form.table.day")),
                            bests),
                    null));
        }
        return Optional.of(
                report(Kind.SEASON, player, texts.of("report.span", texts.day(from), texts.day(day)), sections));
    }

    private List<String> best(Deeds.Best best) {
        return List.of(
                BestsPage.name(texts, best.kind()),
                BestsPage.value(texts, best),
                texts.day(LocalDate.parse(best.held().day())));
    }

    private Section months(List<DayBags> days) {
        Map<YearMonth, int[]> months = new LinkedHashMap<>();
        int bags = 0;
        for (DayBags day : days) {
            int[] sums = months.computeIfAbsent(YearMonth.from(LocalDate.parse(day.day())), month -> new int[2]);
            sums[0]++;
            sums[1] += day.bags();
            bags += day.bags();
        }
        List<List<String>> rows = new ArrayList<>();
        months.forEach((month, sums) ->
                rows.add(List.of(texts.month(month), String.valueOf(sums[0]), String.valueOf(sums[1]))));
        return new Section(
                texts.of("report.season.thrown"),
                List.of(texts.of("report.season.bags", bags, days.size())),
                new DataTable(
                        List.of(
                                texts.of("report.season.month"),
                                texts.of("form.table.days"),
                                texts.of("form.table.bags")),
                        rows),
                null);
    }

    // The session card: what was thrown on a day, and what is known since.

    private Optional<Report> session(Player player, LocalDate day) {
        Map<String, String> names = new LinkedHashMap<>();
        records.bags(player.id()).forEach(bag -> names.put(bag.id(), bag.name()));
        Describe describe = new Describe(texts);
        List<List<String>> rows = new ArrayList<>();
        List<String> unusual = new ArrayList<>();
        Skill skill = skills.skill(player.id(), day);
        for (Run run : runs(player, day)) {
            Optional<RunDetail> detail = records.run(player.id(), run.id());
            if (detail.isEmpty()) {
                // Deleted since.
                continue;
            }
            rows.add(List.of(
                    run.startedAt().substring(11, 16),
                    describe.run(run, names),
                    describe.result(run, detail.get().rounds()),
                    texts.of(run.warmUp() ? "report.session.warm-up" : "report.session.counted")));
            Integer points = run.sum().points();
            if (run.drill() == Drill.TOTAL && points != null && !run.warmUp() && run.finishedAt() != null) {
                unusual.add(skill.without(run.id())
                        .unusual(points, run.sum().rounds())
                        .sentence());
            }
        }
        if (rows.isEmpty()) {
            return Optional.empty();
        }
        List<Section> sections = new ArrayList<>();
        sections.add(new Section(
                texts.of("report.session.runs"),
                unusual,
                new DataTable(
                        List.of(
                                texts.of("report.session.at"),
                                texts.of("card.table.what"),
                                texts.of("card.table.result"),
                                texts.of("report.session.counts")),
                        rows),
                null));
        sections.add(new Section(
                texts.of("report.session.form"), List.of(skill.form(TREND_DAYS).sentence()), null, null));
        return Optional.of(report(Kind.SESSION, player, texts.day(day), sections, "report.session.note"));
    }

    private List<Run> runs(Player player, LocalDate day) {
        List<Run> runs = new ArrayList<>();
        for (Journal.Entry entry :
                records.journal(player.id(), day.toString(), 0, 100).entries()) {
            if (entry.session().day().equals(day.toString())) {
                entry.runs().stream()
                        .filter(run -> !run.deleted() && run.sum().thrown() > 0)
                        .forEach(runs::add);
            }
        }
        return runs;
    }

    /** What stands at the bottom of each page on paper. */
    public String foot() {
        return texts.of("app.name");
    }

    /** The language of the words. */
    public String language() {
        return texts.language();
    }
}
