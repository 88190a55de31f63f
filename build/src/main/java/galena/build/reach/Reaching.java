package galena.build.reach;

import galena.build.figure.Figure;
import galena.build.folder.Build;
import galena.build.folder.PartEntry;
import galena.build.predict.Prediction;
import galena.build.quantity.Engineering;
import galena.build.quantity.Quantity;
import galena.build.quantity.Unit;
import galena.trade.limit.BuildFacts;
import galena.trade.limit.LimitAnswer;
import galena.trade.limit.Transmission;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;

/** From a prediction to its reach. */
public final class Reaching {
    private static final double[] PLAIN_DISTANCES = {1, 2, 3, 5, 10, 20, 30, 100};
    private static final double CURVE_FROM = 0.5;
    private static final double CURVE_TO = 300;
    private static final int CURVE_STEPS = 60;
    private static final double HARMONICS_AT = 10;

    private final Build build;
    private final Prediction prediction;
    private final Prediction.Oscillation oscillation;
    private final Surroundings surroundings;
    private final List<String> notes = new ArrayList<>();

    private Reaching(
            Build build, Prediction prediction, Prediction.Oscillation oscillation, Surroundings surroundings) {
        this.build = build;
        this.prediction = prediction;
        this.oscillation = oscillation;
        this.surroundings = surroundings;
    }

    /**
     * @param build that was predicted
     * @param prediction of it
     * @param surroundings where it is used
     */
    public static ReachAnswer of(Build build, Prediction prediction, Surroundings surroundings) {
        if (prediction.running() instanceof Prediction.Silent silent) return new ReachAnswer.None(silent.reason());
        return new Reaching(build, prediction, (Prediction.Oscillation) prediction.running(), surroundings).answer();
    }

    private ReachAnswer answer() {
        List<PartEntry> parts =
                build.parts().values().stream().filter(p -> p.kind().isAerial()).toList();
        if (parts.isEmpty())
            return new ReachAnswer.None(
                    "the build has no aerial. A loopstick, a loop or a wire among its parts radiates;"
                            + " of a plain coil no size is known");
        List<AerialOf.Unknown> unknown = new ArrayList<>();
        for (PartEntry part : parts) {
            AerialOf.Answer answer = AerialOf.of(part);
            if (answer instanceof AerialOf.Unknown why) {
                unknown.add(why);
                continue;
            }
            Aerial aerial = ((AerialOf.Known) answer).aerial();
            Optional<Prediction.Spectrum> current = Emissions.current(part.name(), oscillation);
            if (current.isEmpty()) {
                unknown.add(new AerialOf.Unknown(part.name(), "hardly any carrier flows in it"));
                continue;
            }
            if (!unknown.isEmpty()) notes.add("Left out: " + AerialOf.reasons(unknown) + ".");
            if (parts.size() > unknown.size() + 1)
                notes.add("Reckoned for " + part.name() + " alone; the build has other aerials, whose fields add.");
            return reach(part, aerial, current.get());
        }
        return new ReachAnswer.None(AerialOf.reasons(unknown));
    }

    private Reach reach(PartEntry part, Aerial aerial, Prediction.Spectrum spectrum) {
        List<Emission> emissions = Emissions.of(aerial, spectrum, oscillation.carrier());
        Emission carrier = emissions.get(0);
        notes.addAll(aerial.notes());
        Optional<Double> wanted = build.intent().distance().map(Quantity::value);
        Figure peak = positivePeak(), depth = depth();
        Rules rules = Judging.of(
                build.intent().rules(), emissions, peak instanceof Figure.Known k ? k.value() : 1, facts(part, aerial));
        List<Double> distances = distances(aerial);
        List<Hearing> hearing = hearing(carrier, depth, wanted, distances);
        boolean hasAxis = aerial instanceof Aerial.Wound;
        nearness(aerial, wanted);
        ownLimits(aerial, spectrum);
        double harmonicsAt = Math.max(wanted.orElse(HARMONICS_AT), aerial.nearest());
        return new Reach(
                prediction.name(),
                prediction.digest(),
                aerial.words(),
                moment(aerial, carrier),
                emissions,
                plain(aerial, wanted).stream()
                        .map(d -> Level.of(carrier, d, hasAxis))
                        .toList(),
                emissions.stream()
                        .skip(1)
                        .map(e -> new Reach.HarmonicLevel(e, Level.of(e, harmonicsAt, hasAxis)))
                        .toList(),
                distances.stream().map(d -> Level.of(carrier, d, hasAxis)).toList(),
                peak,
                depth,
                rules,
                surroundings.words(),
                wanted,
                surroundings.neighbour().isPresent()
                        ? Optional.of(surroundings.neighbour().getAsDouble())
                        : Optional.empty(),
                hearing,
                LimitAnswer.CAUTION,
                notes);
    }

    private static Figure moment(Aerial aerial, Emission carrier) {
        if (aerial instanceof Aerial.Wound wound) {
            double moment = wound.momentPerAmpere().value() * carrier.current().value();
            return carrier.field(moment, Unit.AMPERE_SQUARE_METRE, "magnetic moment", aerial.part());
        }
        return new Figure.Missing("magnetic moment", "a wire makes its field by its height and current");
    }

    private List<Double> plain(Aerial aerial, Optional<Double> wanted) {
        TreeSet<Double> all = new TreeSet<>();
        for (double each : PLAIN_DISTANCES) all.add(each);
        wanted.ifPresent(all::add);
        surroundings.neighbour().ifPresent(all::add);
        all.removeIf(d -> d < aerial.nearest());
        return List.copyOf(all);
    }

    private static List<Double> distances(Aerial aerial) {
        double from = Math.max(CURVE_FROM, aerial.nearest());
        List<Double> all = new ArrayList<>();
        for (int k = 0; k <= CURVE_STEPS; k++)
            all.add(from * Math.pow(Math.max(2, CURVE_TO / from), (double) k / CURVE_STEPS));
        return all;
    }

    private void nearness(Aerial aerial, Optional<Double> wanted) {
        if (wanted.isPresent() && wanted.get() >= aerial.good()) return;
        String metres = Engineering.print(aerial.good(), Unit.METRE, 2);
        if (aerial.good() > aerial.nearest())
            notes.add("Nearer than " + metres + " the aerial is more than a dipole: fields there are up to 15 % off.");
    }

    private void ownLimits(Aerial aerial, Prediction.Spectrum spectrum) {
        int unseen = Emissions.unseen(spectrum);
        if (unseen > 0)
            notes.add(unseen + " of " + spectrum.harmonics().size()
                    + " harmonics lie below what this prediction certifies and are not judged.");
        if (spectrum.harmonics().size() + 1
                > aerial.highest() / oscillation.carrier().value())
            notes.add("Harmonics above " + Engineering.print(aerial.highest(), Unit.HERTZ, 2)
                    + " are not judged: there the wire is too long to count as short.");
        notes.add(
                aerial instanceof Aerial.Wound
                        ? "Free space: ground, pipes and steel near the aerial or the set change the field up to twofold"
                                + " either way. Plain walls hardly do."
                        : "A wire over perfect ground; indoors without a ground system the field is less than this.");
    }

    private Figure positivePeak() {
        if (prediction.modulation() instanceof Prediction.Curve curve
                && curve.positivePeak() instanceof Figure.Known known) return clamped(known);
        Optional<Figure> intended = intended("positive peak");
        if (intended.isPresent()) return intended.get();
        return new Figure.Missing(
                "positive peak", "no modulation is predicted or intended; limits are judged at 100 %");
    }

    /** A curve that sags has a peak below the carrier: for a crest that is none. */
    private static Figure.Known clamped(Figure.Known peak) {
        if (peak.value() >= 0) return peak;
        return new Figure.Known(
                0,
                peak.unit(),
                Math.min(0, peak.low()),
                Math.max(0, peak.high()),
                peak.basis(),
                peak.quantity(),
                peak.at());
    }

    private Figure depth() {
        if (prediction.modulation() instanceof Prediction.Curve curve
                && curve.negativePeak() instanceof Figure.Known negative
                && negative.value() > 0) return negative;
        return intended("depth")
                .orElse(new Figure.Missing("depth", "no modulation is predicted, and the intent names none"));
    }

    private Optional<Figure> intended(String quantity) {
        return build.intent()
                .modulation()
                .filter(q -> q.value() > 0)
                .map(q -> new Figure.Known(
                        q.value(), Unit.FRACTION, q.value(), q.value(), "the intent's, not predicted", quantity, ""));
    }

    private List<Hearing> hearing(Emission carrier, Figure depth, Optional<Double> wanted, List<Double> distances) {
        if (!(depth instanceof Figure.Known known)) {
            notes.add("What sets hear is left out: depth " + depth.text() + ".");
            return List.of();
        }
        if (surroundings.noise().isEmpty() && !Hearing.tabled(carrier.frequency())) {
            notes.add("What sets hear is left out: man-made noise is tabled from 0.3 to 250 MHz.");
            return List.of();
        }
        return Hearing.of(carrier, Math.min(1, known.value()), surroundings, wanted, distances);
    }

    private Judging.Facts facts(PartEntry part, Aerial aerial) {
        OptionalDouble lead = optional(part, "lead");
        OptionalDouble input = surroundings.finalStage();
        boolean all = input.isEmpty() && oscillation.inputPower() instanceof Figure.Known;
        if (all) input = OptionalDouble.of(Math.max(0, ((Figure.Known) oscillation.inputPower()).high()));
        boolean wound = aerial instanceof Aerial.Wound;
        OptionalDouble length = wound || lead.isEmpty()
                ? lead
                : OptionalDouble.of(
                        lead.getAsDouble() + ((Aerial.Upright) aerial).wire().height());
        OptionalDouble coil = wound ? OptionalDouble.of(((Aerial.Wound) aerial).wireLength()) : OptionalDouble.empty();
        return new Judging.Facts(
                wound ? Transmission.Aerial.LOOP : Transmission.Aerial.WIRE,
                new BuildFacts(input, length, optional(part, "ground_lead"), coil),
                all,
                part.path());
    }

    private static OptionalDouble optional(PartEntry part, String key) {
        Optional<Quantity> value = part.values().quantity(key);
        return value.isPresent() ? OptionalDouble.of(value.get().value()) : OptionalDouble.empty();
    }
}
