package galena.build.reach;

import galena.build.figure.Figure;
import galena.build.quantity.Engineering;
import galena.build.quantity.Unit;
import galena.trade.field.Radiator;
import galena.trade.limit.BuildFacts;
import galena.trade.limit.Check;
import galena.trade.limit.LimitAnswer;
import galena.trade.limit.RouteJudgement;
import galena.trade.limit.Rule;
import galena.trade.limit.RuleBook;
import galena.trade.limit.Transmission;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The rules of a region applied to a build's emissions, each line with the interval that the build's spread gives it. */
final class Judging {
    private static final String HELD = "limit held";
    private static final String RESTRICTED = "in a restricted band";

    private final List<Emission> emissions;
    private final Facts facts;

    private Judging(List<Emission> emissions, Facts facts) {
        this.emissions = emissions;
        this.facts = facts;
    }

    /**
     * @param aerial kind that rules tell apart
     * @param build what the rules ask of it
     * @param powerIsOfAll whether the input power is that of the whole build, for want of the final stage's
     * @param path of the aerial in the file, for what must be asked
     */
    record Facts(Transmission.Aerial aerial, BuildFacts build, boolean powerIsOfAll, String path) {}

    /** @param positivePeak of the modulation, Emax/Ec − 1 */
    static Rules of(Optional<String> region, List<Emission> emissions, double positivePeak, Facts facts) {
        if (region.isEmpty())
            return new Rules.NotHeld(
                    "none", "the intent names no rules", "Write intent: {rules: …} with a region's code.");
        List<Radiator> harmonics =
                emissions.stream().skip(1).map(Emission::radiator).toList();
        Transmission transmission =
                new Transmission(facts.aerial(), emissions.get(0).radiator(), harmonics, positivePeak, facts.build());
        LimitAnswer answer = RuleBook.standard().judge(region.get(), transmission);
        if (answer instanceof LimitAnswer.NotHeld none)
            return new Rules.NotHeld(
                    none.region().name(), none.region().note(), none.region().check());
        if (answer instanceof LimitAnswer.UnknownRegion unknown)
            return new Rules.NotHeld(
                    unknown.asked(), "no such region is held", "Held: " + String.join(", ", unknown.known()));
        LimitAnswer.Judged judged = (LimitAnswer.Judged) answer;
        Judging judging = new Judging(emissions, facts);
        return new Rules.Judged(
                judged.region().name(),
                judged.routes().stream().map(judging::route).toList(),
                judged.region().check(),
                judged.region().note());
    }

    private Rules.Route route(RouteJudgement route) {
        List<Rules.Line> lines = new ArrayList<>();
        for (Check check : route.checks()) lines.add(line(check));
        Standing worst = lines.stream()
                .map(Rules.Line::standing)
                .max(Comparator.naturalOrder())
                .orElse(Standing.of(route.outcome()));
        return new Rules.Route(route.route(), worst, route.verified(), lines, route.words());
    }

    private Rules.Line line(Check check) {
        Optional<Emission> emission = emission(check.frequency());
        Rule.Quantity quantity = check.rule().quantity();
        Spread spread = emission.map(e -> spread(e, quantity)).orElse(new Spread(0, 0));
        Optional<Figure.Known> margin = margin(check.margin(), spread, "margin");
        Optional<Figure.Known> crest = margin(check.modulatedMargin(), spread, "margin at the crest of modulation");
        String subject = emission.map(e -> subject(e, check)).orElseGet(() -> subject(check));
        return new Rules.Line(
                subject,
                check.rule().section(),
                standing(check, crest.or(() -> margin)),
                figure(check.limit(), unit(quantity), new Spread(0, 0), HELD, subject),
                check.distance().isPresent() ? Optional.of(check.distance().getAsDouble()) : Optional.empty(),
                figure(check.found(), unit(quantity), spread, "predicted", subject),
                figure(check.loopEquivalent(), Unit.VOLT_PER_METRE, spread, "predicted", "377 Ω times H"),
                margin,
                crest,
                emission.filter(e -> e.order() > 1).isPresent(),
                check.rule().isVerified(),
                check.rule().provenance().source() + " ("
                        + check.rule().provenance().date() + ")",
                remark(check));
    }

    private static String subject(Check check) {
        return switch (check.rule().quantity()) {
            case INPUT_POWER -> "final stage";
            case TOTAL_LENGTH -> "length";
            default -> check.subject();
        };
    }

    /** The frequency no finer than a build's is known. */
    private static String subject(Emission emission, Check check) {
        String words = emission.name() + ", " + Engineering.print(emission.frequency(), Unit.HERTZ, 4);
        return check.subject().endsWith(RESTRICTED) ? words + " " + RESTRICTED : words;
    }

    /** Field of an emission against its typical one, dB: {@code low} zero or less, {@code high} zero or more. */
    private record Spread(double low, double high) {}

    /** What a harmonic is below its carrier has the spread of both. */
    private Spread spread(Emission emission, Rule.Quantity quantity) {
        if (quantity != Rule.Quantity.ATTENUATION) return new Spread(emission.lowDecibels(), emission.highDecibels());
        Emission carrier = emissions.get(0);
        double relativeLow = difference(emission.lowDecibels(), carrier.lowDecibels());
        double relativeHigh = difference(emission.highDecibels(), carrier.highDecibels());
        return new Spread(-relativeLow, relativeHigh);
    }

    /** The carrier's own spread is in both, and drops out. */
    private static double difference(double both, double common) {
        return Math.sqrt(Math.max(0, both * both - common * common));
    }

    private Optional<Emission> emission(OptionalDouble frequency) {
        if (frequency.isEmpty()) return Optional.empty();
        return emissions.stream()
                .min(Comparator.comparingDouble(e -> Math.abs(e.frequency() - frequency.getAsDouble())));
    }

    private static Optional<Figure.Known> figure(
            OptionalDouble value, Unit unit, Spread spread, String basis, String quantity) {
        if (value.isEmpty()) return Optional.empty();
        double v = value.getAsDouble();
        boolean decibels = unit == Unit.DECIBEL;
        double low = decibels ? v - spread.high() : v * Math.pow(10, spread.low() / 20); // more field attenuates less
        double high = decibels ? v - spread.low() : v * Math.pow(10, spread.high() / 20);
        return Optional.of(new Figure.Known(v, unit, Math.min(v, low), Math.max(v, high), basis, quantity, ""));
    }

    /** More field is less margin. */
    private static Optional<Figure.Known> margin(OptionalDouble value, Spread spread, String quantity) {
        if (value.isEmpty()) return Optional.empty();
        double v = value.getAsDouble();
        return Optional.of(new Figure.Known(
                v, Unit.DECIBEL, v - spread.high(), v - spread.low(), "limit held over prediction", quantity, ""));
    }

    private Standing standing(Check check, Optional<Figure.Known> margin) {
        Standing typical = Standing.of(check.outcome());
        if (typical == Standing.EXCEEDED
                && check.rule().quantity() == Rule.Quantity.INPUT_POWER
                && facts.powerIsOfAll()) return Standing.OPEN;
        boolean field = check.frequency().isPresent();
        if (typical == Standing.WITHIN
                && field
                && margin.isPresent()
                && margin.get().low() < 0) return Standing.TYPICALLY;
        return typical;
    }

    private String remark(Check check) {
        return switch (check.rule().quantity()) {
            case INPUT_POWER ->
                facts.powerIsOfAll()
                        ? "of the whole build, which is at least the final stage's; --final-stage says how much that takes"
                        : check.words();
            case TOTAL_LENGTH ->
                check.found().isPresent()
                        ? check.words()
                        : check.words() + " Write lead and ground_lead into " + facts.path() + ".";
            default -> check.words();
        };
    }

    private static Unit unit(Rule.Quantity quantity) {
        return switch (quantity) {
            case E_FIELD -> Unit.VOLT_PER_METRE;
            case H_FIELD -> Unit.AMPERE_PER_METRE;
            case INPUT_POWER -> Unit.WATT;
            case TOTAL_LENGTH -> Unit.METRE;
            case ATTENUATION, REFERENCE -> Unit.DECIBEL;
        };
    }
}
