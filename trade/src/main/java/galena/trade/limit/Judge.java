package galena.trade.limit;

import galena.trade.field.Radiator;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.Set;

/** Applies one region's rules to one transmission. */
final class Judge {
    /** Distance (m) at which harmonics are compared with the carrier where the rule names none: that of limits at MF. */
    private static final double COMPARED_AT = 30;

    private static final String ANY = "any";
    private static final OptionalDouble NONE = OptionalDouble.empty();

    private final List<Rule> rules;
    private final Transmission transmission;

    Judge(List<Rule> rules, Transmission transmission) {
        this.rules = rules;
        this.transmission = transmission;
    }

    List<RouteJudgement> routes() {
        Set<String> names = new LinkedHashSet<>();
        for (Rule rule : rules) {
            if (forCarrier(rule)) names.add(rule.route());
        }
        return names.stream().map(this::route).toList();
    }

    private static boolean forCarrier(Rule rule) {
        return rule.scope() == Rule.Scope.FUNDAMENTAL || rule.scope() == Rule.Scope.ANY;
    }

    private static boolean forUnwanted(Rule rule) {
        return rule.scope() == Rule.Scope.UNWANTED || rule.scope() == Rule.Scope.ANY;
    }

    private RouteJudgement route(String name) {
        List<Rule> all =
                rules.stream().filter(rule -> rule.route().equals(name)).toList();
        double carrier = transmission.carrier().frequency();
        List<Rule> forCarrier = all.stream()
                .filter(rule -> forCarrier(rule) && rule.covers(carrier))
                .toList();
        boolean verified = all.stream().allMatch(Rule::isVerified);
        if (forCarrier.isEmpty()) {
            return RouteJudgement.notAvailable(name, verified, "no rule of this kind covers " + kilohertz(carrier));
        }
        for (Rule rule : forCarrier) {
            if (!open(rule)) {
                return RouteJudgement.notAvailable(name, verified, "for " + stations(rule) + " only");
            }
        }
        List<Check> checks = new ArrayList<>();
        for (Rule rule : forCarrier) checks.add(carrierCheck(rule));
        checks.addAll(carrierInRestrictedBands());
        for (Radiator harmonic : transmission.harmonics()) {
            for (Rule rule : all) {
                if (forUnwanted(rule) && rule.covers(harmonic.frequency())) checks.add(unwanted(rule, harmonic));
            }
            if (all.stream().noneMatch(rule -> rule.scope() == Rule.Scope.ANY)) {
                checks.addAll(restrictedLimits(harmonic));
            }
        }
        return RouteJudgement.of(name, checks);
    }

    private static String stations(Rule rule) {
        return switch (rule.applies()) {
            case "loop" -> "loop aerials";
            case "loop-wide" -> "loop aerials whose emission is wider than 10 kHz";
            case "carrier-current" -> "carrier-current and leaky-cable systems";
            case "leaky-cable" -> "leaky-cable systems";
            case "announcement" -> "announcement services";
            default -> rule.applies() + " stations";
        };
    }

    private boolean open(Rule rule) {
        return rule.applies().equals(ANY)
                || (rule.applies().equals("loop") && transmission.aerial() == Transmission.Aerial.LOOP);
    }

    private Check carrierCheck(Rule rule) {
        return switch (rule.quantity()) {
            case INPUT_POWER -> inputPower(rule);
            case TOTAL_LENGTH -> totalLength(rule);
            default ->
                field(
                        rule,
                        transmission.carrier(),
                        "carrier " + kilohertz(transmission.carrier().frequency()));
        };
    }

    private Check inputPower(Rule rule) {
        double limit = rule.limit(transmission.carrier().frequency()).orElseThrow();
        OptionalDouble found = transmission.facts().finalStageInput();
        if (found.isEmpty()) {
            return asked(
                    rule,
                    "input power",
                    limit,
                    "What d.c. power goes into the final radio-frequency stage, all of it?");
        }
        Outcome outcome = found.getAsDouble() <= limit ? Outcome.WITHIN : Outcome.EXCEEDED;
        return fact(
                rule,
                "d.c. input power of the final stage",
                outcome,
                limit,
                found.getAsDouble(),
                finite(10 * Math.log10(limit / found.getAsDouble())),
                "input power, not radiated or output power");
    }

    /** Aerial, feed line and ground lead; with the wire of a coil as well where that is known, for nothing settles it. */
    private Check totalLength(Rule rule) {
        double limit = rule.limit(transmission.carrier().frequency()).orElseThrow();
        BuildFacts facts = transmission.facts();
        if (facts.aerialAndFeed().isEmpty() || facts.groundLead().isEmpty()) {
            return asked(
                    rule,
                    "total length",
                    limit,
                    "How long are aerial, feed line and ground lead together? The ground lead counts when used.");
        }
        double bare = facts.aerialAndFeed().getAsDouble() + facts.groundLead().getAsDouble();
        double withCoil = bare + facts.coilWire().orElse(0);
        String words = facts.coilWire().isPresent()
                ? String.format(Locale.ROOT, "%.2f m without and %.2f m with the wire of the coil", bare, withCoil)
                : String.format(Locale.ROOT, "%.2f m; wire of a coil, if there is one, not given", bare);
        Outcome outcome = withCoil <= limit ? Outcome.WITHIN : bare <= limit ? Outcome.OPEN : Outcome.EXCEEDED;
        if (outcome == Outcome.OPEN) words += ": whether a coil's wire counts is not settled; ask the regulator";
        return fact(rule, "aerial, feed line and ground lead", outcome, limit, bare, NONE, words);
    }

    private static Check asked(Rule rule, String subject, double limit, String question) {
        return new Check(
                rule, subject, NONE, Outcome.OPEN, OptionalDouble.of(limit), NONE, NONE, NONE, NONE, NONE, question);
    }

    private static Check fact(
            Rule rule,
            String subject,
            Outcome outcome,
            double limit,
            double found,
            OptionalDouble margin,
            String words) {
        return new Check(
                rule,
                subject,
                NONE,
                outcome,
                OptionalDouble.of(limit),
                NONE,
                OptionalDouble.of(found),
                NONE,
                margin,
                NONE,
                words);
    }

    /** A field at the region's own distance, in the region's own quantity. */
    private Check field(Rule rule, Radiator emission, String subject) {
        double frequency = emission.frequency();
        double limit = rule.limit(frequency).orElseThrow();
        double distance = rule.distance(frequency).orElse(COMPARED_AT);
        boolean electric = rule.quantity() == Rule.Quantity.E_FIELD;
        double found = electric ? emission.worstE(distance) : emission.worstH(distance);
        double loop = emission.worstLoopEquivalent(distance);
        double stricter = electric ? Math.max(found, loop) : found;
        boolean modulated = !rule.detector().equals("unmodulated");
        double crest = modulated ? 1 + transmission.positivePeak() : 1;
        double margin = 20 * Math.log10(limit / stricter);
        double atCrest = margin - 20 * Math.log10(crest);
        return new Check(
                rule,
                subject,
                OptionalDouble.of(frequency),
                atCrest >= 0 ? Outcome.WITHIN : Outcome.EXCEEDED,
                OptionalDouble.of(limit),
                OptionalDouble.of(distance),
                OptionalDouble.of(found),
                electric ? OptionalDouble.of(loop) : NONE,
                finite(margin),
                modulated ? finite(atCrest) : NONE,
                electric && loop > found ? "the loop-equivalent is the stricter reading" : "");
    }

    private static OptionalDouble finite(double decibels) {
        return Double.isFinite(decibels) ? OptionalDouble.of(decibels) : NONE;
    }

    private Check unwanted(Rule rule, Radiator harmonic) {
        Check check = rule.quantity() == Rule.Quantity.ATTENUATION
                ? attenuation(rule, harmonic)
                : field(rule, harmonic, name(harmonic));
        if (rule.alternative().isEmpty() || check.outcome() == Outcome.WITHIN) return check;
        for (Rule other : rules) {
            if (!other.route().equals(rule.alternative()) || !other.covers(harmonic.frequency())) continue;
            Check instead = field(other, harmonic, name(harmonic));
            if (instead.outcome() == Outcome.WITHIN) return instead;
        }
        return check;
    }

    /** Harmonic below the unmodulated carrier (dB), by true E and by what a loop reads, the lesser of the two. */
    private Check attenuation(Rule rule, Radiator harmonic) {
        double distance = rule.distance(harmonic.frequency()).orElse(COMPARED_AT);
        Radiator carrier = transmission.carrier();
        double electric = below(carrier.worstE(distance), harmonic.worstE(distance));
        double magnetic = below(carrier.worstH(distance), harmonic.worstH(distance));
        double found = Math.min(electric, magnetic);
        double limit = rule.limit(harmonic.frequency()).orElseThrow();
        return new Check(
                rule,
                name(harmonic),
                OptionalDouble.of(harmonic.frequency()),
                found >= limit ? Outcome.WITHIN : Outcome.EXCEEDED,
                OptionalDouble.of(limit),
                OptionalDouble.of(distance),
                finite(found),
                NONE,
                finite(found - limit),
                NONE,
                "radiated field against the carrier's; the rule may be read at the aerial's terminals instead");
    }

    /** dB by which a harmonic lies below the carrier; one that isn't there lies below any. */
    private static double below(double carrier, double harmonic) {
        return harmonic > 0 ? 20 * Math.log10(carrier / harmonic) : Double.POSITIVE_INFINITY;
    }

    private List<Check> carrierInRestrictedBands() {
        double carrier = transmission.carrier().frequency();
        return restricted(carrier).stream()
                .map(rule -> new Check(
                        rule,
                        "carrier " + kilohertz(carrier),
                        OptionalDouble.of(carrier),
                        Outcome.EXCEEDED,
                        NONE,
                        NONE,
                        NONE,
                        NONE,
                        NONE,
                        NONE,
                        "the carrier lies in a restricted band"))
                .toList();
    }

    private List<Check> restrictedLimits(Radiator harmonic) {
        if (restricted(harmonic.frequency()).isEmpty()) return List.of();
        return rules.stream()
                .filter(rule -> rule.scope() == Rule.Scope.ANY && rule.covers(harmonic.frequency()))
                .map(rule -> field(rule, harmonic, name(harmonic) + " in a restricted band"))
                .toList();
    }

    private List<Rule> restricted(double frequency) {
        return rules.stream()
                .filter(rule -> rule.scope() == Rule.Scope.RESTRICTED && rule.covers(frequency))
                .toList();
    }

    private String name(Radiator harmonic) {
        long order = Math.round(harmonic.frequency() / transmission.carrier().frequency());
        return "harmonic " + order + ", " + kilohertz(harmonic.frequency());
    }

    private static String kilohertz(double frequency) {
        return BigDecimal.valueOf(Math.round(frequency), 3).stripTrailingZeros().toPlainString() + " kHz";
    }
}
