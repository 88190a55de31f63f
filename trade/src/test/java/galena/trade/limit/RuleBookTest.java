package galena.trade.limit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import galena.proof.Kind;
import galena.proof.Published;
import galena.trade.field.ElectricDipole;
import galena.trade.field.FreeSpace;
import galena.trade.field.MagneticDipole;
import galena.trade.field.Radiator;
import galena.trade.source.Basis;
import galena.trade.source.DataTable;
import galena.trade.source.PublishedRows;
import java.math.BigDecimal;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class RuleBookTest {
    private static final RuleBook BOOK = RuleBook.standard();

    private static Region region(String code) {
        return BOOK.region(code).orElseThrow();
    }

    private static Rule rule(String id) {
        return BOOK.regions().stream()
                .flatMap(region -> BOOK.rules(region).stream())
                .filter(rule -> rule.id().equals(id))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no rule " + id));
    }

    @Test
    void agrees_with_every_published_limit_and_worked_value() {
        int rows = 0;
        int compared = 0;
        for (DataTable.Row row : PublishedRows.of("limits.csv")) {
            rows++;
            Published source = Published.source("trade", PublishedRows.kind(row, Kind.STANDARD), row.text("source"));
            if (row.text("scope").startsWith("worked value")) workedValue(row, source);
            else if (hasFigure(row)) limit(row, source);
            else continue;
            compared++;
        }
        assertThat(rows).isEqualTo(108);
        // Left: the text of 15.31, 15.35 and CISPR 16, two campus rows, and two rows that name a document or a
        // quantity.
        assertThat(compared).isEqualTo(100);
    }

    private static boolean hasFigure(DataTable.Row row) {
        return !List.of(
                        "US-31f2",
                        "US-35a",
                        "US-35b",
                        "CISPR16-RBW-B",
                        "US-221-b1",
                        "US-221-b2",
                        "EU-7003-A9-scope",
                        "UK-2030")
                .contains(row.text("id"));
    }

    private static void limit(DataTable.Row row, Published source) {
        String id = row.text("id");
        if (id.equals("CA-210-A2.2-1")) {
            source.matches(id + " (mW)", 100, rule(id + "-power").limit(1e6).orElseThrow() * 1e3, 1e-9);
            source.matches(id + " (m)", 3, rule(id + "-length").limit(1e6).orElseThrow(), 1e-9);
            return;
        }
        Rule rule = rule(id);
        assertThat(rule.provenance().source()).startsWith(row.text("source").substring(0, 10));
        assertThat(rule.provenance().basis()).isEqualTo(Basis.named(row.text("basis")));
        assertThat(rule.lowestFrequency())
                .isEqualTo(row.number("frequency_low_Hz").orElse(0));
        assertThat(rule.highestFrequency())
                .isEqualTo(row.number("frequency_high_Hz").orElse(Double.POSITIVE_INFINITY));
        if (rule.quantity() == Rule.Quantity.REFERENCE) {
            source.holds(id + " is a restricted band", rule.scope() == Rule.Scope.RESTRICTED, rule.toString());
            return;
        }
        double low = row.number("frequency_low_Hz").orElse(1e6);
        double at =
                low > 0 ? Math.min(low * 1.01, row.number("frequency_high_Hz").orElse(1e30)) : 1e6;
        source.matchesRelative(
                id + " at " + at + " Hz, in SI",
                printed(row, at),
                rule.limit(at).orElseThrow(),
                1e-9);
        if (row.text("distance_m").isEmpty() || rule.quantity() == Rule.Quantity.ATTENUATION) return;
        double distance = row.text("distance_m").startsWith("47715") ? 47715 / (at / 1e3) : row.required("distance_m");
        source.matches(id + " distance (m)", distance, rule.distance(at).orElseThrow(), 1e-9);
    }

    /** The limit of a row in SI at a frequency, worked here from the row's own words. */
    private static double printed(DataTable.Row row, double frequency) {
        double kHz = frequency / 1e3;
        double value = row.text("value").isEmpty() ? fromFormula(row.text("formula"), kHz) : row.required("value");
        return switch (row.text("unit")) {
            case "µV/m", "µA/m" -> value * 1e-6;
            case "dBµA/m" -> Math.pow(10, value / 20) * 1e-6;
            case "mW" -> value * 1e-3;
            default -> value;
        };
    }

    private static double fromFormula(String formula, double kHz) {
        if (formula.endsWith("/F_kHz")) return Double.parseDouble(formula.split("/")[0]) / kHz;
        if (formula.startsWith("27-10")) return 27 - 10 * Math.log10(kHz / 9);
        if (formula.startsWith("6-10")) return 6 - 10 * Math.log10(kHz / 9);
        if (formula.startsWith("3.5*f_GHz")) return Math.min(500, 3.5 * kHz / 1e6);
        throw new AssertionError("no reading of " + formula);
    }

    private static void workedValue(DataTable.Row row, Published source) {
        String id = row.text("id");
        if (id.startsWith("US-209-at")) {
            double at = row.required("frequency_low_Hz");
            double limit = rule("US-209-2").limit(at).orElseThrow() * 1e6;
            source.matches(id + " (µV/m)", row.required("value"), limit, halfOfLastDigit(row.text("value")));
        } else if (id.startsWith("US-221-at")) {
            double distance =
                    rule("US-221-a").distance(row.required("frequency_low_Hz")).orElseThrow();
            source.matches(id + " (m)", row.required("value"), distance, halfOfLastDigit(row.text("value")));
        } else if (id.startsWith("US-31f2")) {
            double limit = rule("US-209-2").limit(1e6).orElseThrow() * 1e6;
            double allowed = NearerReading.allowed(limit, 30, row.required("distance_m"));
            source.matches(id + " (µV/m)", row.required("value"), allowed, halfOfLastDigit(row.text("value")));
        } else if (id.startsWith("US-205-h")) {
            harmonicInRestrictedBand(row, source);
        } else if (id.equals("EU-H-linear")) {
            double limit = rule("EU-7003-A9-MF-10k").limit(1e6).orElseThrow() * 1e6;
            source.matches(id + " (µA/m)", row.required("value"), limit, halfOfLastDigit(row.text("value")));
        } else if (id.equals("EU-moment-axial")) {
            // The row is quasi-static, so the frequency is taken low enough.
            double limit = rule("EU-7003-A9-MF-10k").limit(1e6).orElseThrow();
            double moment = MagneticDipole.forWorstH(limit, 10, 1).moment();
            source.matchesRelative(id + " (A·m²)", row.required("value"), moment, 1e-6);
        } else {
            throw new AssertionError("no check for " + id);
        }
    }

    private static double halfOfLastDigit(String printed) {
        return new BigDecimal(printed).ulp().doubleValue() / 2 * (1 + 1e-9);
    }

    private static void harmonicInRestrictedBand(DataTable.Row row, Published source) {
        int order = row.text("id").charAt("US-205-h".length()) - '0';
        double low = row.required("frequency_low_Hz");
        double high = row.required("frequency_high_Hz");
        double tenthOfHertz = 0.1;
        List<Rule> bands = BOOK.restrictedBands(region("us"));
        for (double inside : List.of(low + tenthOfHertz, (low + high) / 2, high - tenthOfHertz)) {
            boolean restricted = bands.stream().anyMatch(band -> band.covers(inside * order));
            source.holds("harmonic " + order + " of " + inside + " Hz is restricted", restricted, "" + restricted);
        }
        for (double outside : List.of(low - tenthOfHertz, high + tenthOfHertz)) {
            boolean restricted = bands.stream().anyMatch(band -> band.covers(outside * order));
            source.holds("harmonic " + order + " of " + outside + " Hz is free", !restricted, "" + restricted);
        }
    }

    private static Transmission rod(double moment, double frequency, List<Radiator> harmonics, BuildFacts facts) {
        return new Transmission(Transmission.Aerial.LOOP, new MagneticDipole(moment, frequency), harmonics, 0.9, facts);
    }

    private static RouteJudgement route(LimitAnswer answer, String name) {
        return ((LimitAnswer.Judged) answer)
                .routes().stream()
                        .filter(route -> route.route().equals(name))
                        .findFirst()
                        .orElseThrow();
    }

    @Test
    void the_stricter_of_true_field_and_loop_reading_rules_and_the_crest_of_modulation_counts() {
        double f = 1e6;
        LimitAnswer answer = BOOK.judge("us", rod(1e-3, f, List.of(), BuildFacts.NONE));
        Check check = route(answer, "field limit").checks().get(0);
        MagneticDipole dipole = new MagneticDipole(1e-3, f);
        assertThat(check.distance()).hasValue(30);
        assertThat(check.limit().orElseThrow()).isCloseTo(24e-6, within(1e-15));
        assertThat(check.found().orElseThrow()).isEqualTo(dipole.broadside(30).greatestE());
        assertThat(check.loopEquivalent().orElseThrow())
                .isEqualTo(dipole.onAxis(30).greatestH() * FreeSpace.IMPEDANCE);
        assertThat(check.loopEquivalent().orElseThrow())
                .isGreaterThan(check.found().orElseThrow());
        double margin = 20 * Math.log10(24e-6 / check.loopEquivalent().orElseThrow());
        assertThat(check.margin().orElseThrow()).isCloseTo(margin, within(1e-9));
        assertThat(check.modulatedMargin().orElseThrow()).isCloseTo(margin - 20 * Math.log10(1.9), within(1e-9));
        assertThat(check.outcome()).isEqualTo(Outcome.WITHIN);
    }

    @Test
    void a_loop_is_judged_in_europe_by_h_at_ten_metres_and_marked_unverified() {
        double most = MagneticDipole.forWorstH(0.177828e-6, 10, 999e3).moment();
        for (double moment : List.of(most / 2, most / 1.5)) {
            RouteJudgement judged =
                    route(BOOK.judge("cept", rod(moment, 999e3, List.of(), BuildFacts.NONE)), "inductive loop");
            assertThat(judged.outcome()).isEqualTo(moment == most / 2 ? Outcome.WITHIN : Outcome.EXCEEDED);
            assertThat(judged.verified()).isFalse();
            assertThat(judged.checks().get(0).loopEquivalent()).isEmpty();
        }
        Transmission wire = new Transmission(
                Transmission.Aerial.WIRE, new ElectricDipole(1e-3, 999e3, true), List.of(), 0.9, BuildFacts.NONE);
        assertThat(route(BOOK.judge("eu", wire), "inductive loop").outcome()).isEqualTo(Outcome.NOT_AVAILABLE);
    }

    /** One country's own text, read: the figure that is recalled for the whole of Europe. */
    @Test
    void the_netherlands_regulation_states_the_figure_recalled_for_europe() {
        Published source = Published.source(
                "trade",
                Kind.STANDARD,
                "Netherlands, Regeling gebruik van frequentieruimte zonder vergunning en zonder meldingsplicht 2015, "
                        + "inductive devices, row N: 148.5 to 5000 kHz, -15 dBµA/m at 10 m in any 10 kHz, -5 in all");
        Rule read = rule("NL-2015-N");
        source.matches(
                "limit in any 10 kHz (dBµA/m)",
                -15,
                20 * Math.log10(read.limit(1e6).orElseThrow() * 1e6),
                1e-9);
        double total = rule("NL-2015-N-total").limit(1e6).orElseThrow();
        source.matches("limit of the whole (dBµA/m)", -5, 20 * Math.log10(total * 1e6), 1e-9);
        assertThat(read.isVerified()).isTrue();
        assertThat(read.distance(1e6)).hasValue(10);
        assertThat(read.limit(1e6)).isEqualTo(rule("EU-7003-A9-MF-10k").limit(1e6));
        assertThat(route(BOOK.judge("nl", rod(1e-4, 1e6, List.of(), BuildFacts.NONE)), "inductive loop")
                        .verified())
                .isTrue();
    }

    @Test
    void input_power_and_length_are_asked_and_then_judged_both_ways_about_the_coil() {
        RouteJudgement asked = route(BOOK.judge("us", rod(1, 1e6, List.of(), BuildFacts.NONE)), "power and length");
        assertThat(asked.outcome()).isEqualTo(Outcome.OPEN);
        assertThat(asked.checks()).hasSize(2).allSatisfy(check -> assertThat(check.words())
                .contains("?"));
        assertThat(facts(0.08, 2.5, 0.4, 0).outcome()).isEqualTo(Outcome.WITHIN);
        assertThat(facts(0.12, 2.5, 0.4, 0).outcome()).isEqualTo(Outcome.EXCEEDED);
        assertThat(facts(0.08, 2.5, 0.6, 0).outcome()).isEqualTo(Outcome.EXCEEDED);
        assertThat(facts(0.08, 2.5, 0.4, 20).outcome()).isEqualTo(Outcome.OPEN);
    }

    private static RouteJudgement facts(double power, double aerial, double ground, double coil) {
        BuildFacts facts = new BuildFacts(
                OptionalDouble.of(power),
                OptionalDouble.of(aerial),
                OptionalDouble.of(ground),
                OptionalDouble.of(coil));
        return route(BOOK.judge("usa", rod(1, 1e6, List.of(), facts)), "power and length");
    }

    @Test
    void a_harmonic_must_be_down_and_meets_the_field_limit_where_the_band_is_restricted() {
        BuildFacts facts = new BuildFacts(
                OptionalDouble.of(0.05), OptionalDouble.of(1), OptionalDouble.of(0), OptionalDouble.of(0));
        double carrier = 1090e3;
        Radiator strong = new MagneticDipole(0.2, 2 * carrier);
        RouteJudgement judged = route(BOOK.judge("us", rod(1, carrier, List.of(strong), facts)), "power and length");
        assertThat(judged.outcome()).isEqualTo(Outcome.EXCEEDED);
        assertThat(judged.checks()).anySatisfy(check -> {
            assertThat(check.subject()).contains("restricted");
            assertThat(check.limit().orElseThrow()).isCloseTo(30e-6, within(1e-12));
        });
        Radiator weak = new MagneticDipole(1e-4, 2 * 999e3);
        RouteJudgement clean = route(BOOK.judge("us", rod(1, 999e3, List.of(weak), facts)), "power and length");
        assertThat(clean.outcome()).isEqualTo(Outcome.WITHIN);
        assertThat(clean.checks())
                .noneSatisfy(check -> assertThat(check.subject()).contains("restricted"));
    }

    /** Twenty decibels down, or inside the general limits, whichever is easier. */
    @Test
    void canada_lets_a_weak_carriers_harmonics_meet_the_general_limit_instead() {
        Radiator harmonic = new MagneticDipole(2e-4, 2e6);
        RouteJudgement judged =
                route(BOOK.judge("ca", rod(1e-3, 1e6, List.of(harmonic), BuildFacts.NONE)), "field limit");
        Check check = judged.checks().get(1);
        assertThat(check.rule().id()).isEqualTo("CA-GEN-H-3");
        assertThat(check.outcome()).isEqualTo(Outcome.WITHIN);
        assertThat(judged.verified()).isFalse();
        assertThat(route(BOOK.judge("ca", rod(1e-3, 1e6, List.of(), BuildFacts.NONE)), "leaky cable")
                        .outcome())
                .isEqualTo(Outcome.NOT_AVAILABLE);
    }

    @Test
    void at_a_band_edge_both_neighbours_bind() {
        RouteJudgement edge = route(BOOK.judge("us", rod(1e-4, 1705e3, List.of(), BuildFacts.NONE)), "field limit");
        assertThat(edge.checks())
                .extracting(check -> check.limit().orElseThrow())
                .hasSize(2);
        RouteJudgement low = route(BOOK.judge("us", rod(1e-4, 490e3, List.of(), BuildFacts.NONE)), "field limit");
        assertThat(low.checks())
                .extracting(check -> check.distance().orElseThrow())
                .containsExactly(300.0, 30.0);
    }

    @Test
    void regions_without_figures_say_so_and_where_to_read() {
        Transmission any = rod(1e-3, 1e6, List.of(), BuildFacts.NONE);
        for (String code : List.of("uk", "nz", "au")) {
            assertThat(BOOK.judge(code, any)).isInstanceOfSatisfying(LimitAnswer.NotHeld.class, answer -> {
                assertThat(answer.region().check()).isNotBlank();
                assertThat(answer.region().note()).isNotBlank();
            });
        }
        assertThat(BOOK.judge("atlantis", any))
                .isInstanceOfSatisfying(LimitAnswer.UnknownRegion.class, answer -> assertThat(answer.known())
                        .contains("us", "cept"));
        assertThat(route(BOOK.judge("jp", any), "extremely weak station")
                        .checks()
                        .get(0)
                        .distance())
                .hasValue(3);
    }

    @Test
    void every_rule_is_sound() {
        for (Region region : BOOK.regions()) {
            assertThat(BOOK.rules(region).isEmpty())
                    .as(region.name())
                    .isEqualTo(List.of("uk", "au").contains(region.code()));
            for (Rule rule : BOOK.rules(region)) {
                assertThat(rule.section()).isNotBlank();
                assertThat(rule.provenance().source()).isNotBlank();
                double inside = Math.min(rule.highestFrequency(), Math.max(rule.lowestFrequency(), 1e6));
                if (rule.quantity() != Rule.Quantity.REFERENCE)
                    assertThat(rule.limit(inside)).isPresent();
                boolean field = rule.quantity() == Rule.Quantity.E_FIELD || rule.quantity() == Rule.Quantity.H_FIELD;
                if (field) assertThat(rule.distance(inside).orElseThrow()).isPositive();
            }
        }
        assertThatThrownBy(() -> rod(1, 1e6, List.of(new MagneticDipole(1, 9e5)), BuildFacts.NONE))
                .hasMessageContaining("no harmonic");
    }
}
