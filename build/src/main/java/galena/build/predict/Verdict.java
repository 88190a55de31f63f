package galena.build.predict;

import galena.build.figure.Figure;
import galena.build.folder.Build;
import galena.build.folder.Intent;
import galena.build.modulation.Modulated;
import galena.build.modulation.ToneAnswer;
import galena.build.predict.Prediction.Judgement;
import galena.build.predict.Prediction.Outcome;
import galena.build.quantity.Engineering;
import galena.build.quantity.Quantity;
import galena.build.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Holds the figures of a prediction against the intent. What the intent does not name is not judged. */
final class Verdict {
    private static final int BRIEF = 3;

    /** A free-running carrier is on its channel within this after set-up (common practice). */
    private static final double ON_CHANNEL = 500;

    /** Strongest harmonic at the aerial when the intent names none: −30 dBc, a suggested line, common practice. */
    private static final double USUAL_HARMONICS = -30;

    /** The live accuracy's floor, dB against the carrier; a harmonic without a figure lies below it. */
    private static final double LOWEST_FLOOR = -60;

    private final Build build;
    private final List<Judgement> judgements = new ArrayList<>();

    private Verdict(Build build) {
        this.build = build;
    }

    static List<Judgement> of(
            Build build,
            Optional<Prediction.StartupFigures> startup,
            Prediction.Running running,
            Prediction.Modulation modulation,
            Optional<Reach> reach) {
        Verdict verdict = new Verdict(build);
        Intent intent = build.intent();
        startup.ifPresent(verdict::starts);
        if (running instanceof Prediction.Oscillation oscillation) {
            intent.carrier().ifPresent(wanted -> verdict.carrier(wanted, oscillation, reach));
            verdict.harmonics(intent.harmonics(), oscillation);
            intent.runtime().ifPresent(wanted -> verdict.runtime(wanted, oscillation));
        } else if (running instanceof Prediction.Silent silent) {
            intent.carrier()
                    .ifPresent(wanted -> verdict.add(
                            "carrier",
                            wanted.toString(),
                            new Figure.Missing("carrier", silent.reason()),
                            Outcome.FAILS,
                            ""));
        }
        intent.modulation().ifPresent(wanted -> verdict.modulation(wanted, modulation));
        return List.copyOf(verdict.judgements);
    }

    /** Lowest and highest carrier that the adjustments reach, Hz, and the adjustment that gets there. */
    record Reach(String part, double low, double high) {}

    private void add(String item, String wanted, Figure found, Outcome outcome, String remark) {
        judgements.add(new Judgement(item, wanted, found, outcome, remark));
    }

    private void starts(Prediction.StartupFigures startup) {
        if (!(startup.weakest() instanceof Figure.Known weakest)) {
            Outcome outcome = startup.starts() ? Outcome.MEETS : Outcome.FAILS;
            add("starts by itself", "margin above 0 %", startup.margin(), outcome, "");
            return;
        }
        Outcome outcome = !startup.starts() ? Outcome.FAILS : weakest.value() > 0 ? Outcome.MEETS : Outcome.MAY_FAIL;
        add("starts by itself", "margin above 0 % with the weakest device", weakest, outcome, "");
    }

    private void carrier(Quantity wanted, Prediction.Oscillation oscillation, Optional<Reach> reach) {
        Figure.Known carrier = oscillation.carrier();
        double off = carrier.value() - wanted.value();
        if (Math.abs(off) <= ON_CHANNEL) {
            add("carrier", wanted.toString(), carrier, Outcome.MEETS, "as set; trim on the bench");
            return;
        }
        String now =
                (off > 0 ? "above by " : "below by ") + Engineering.print(Math.abs(off), Unit.HERTZ, 3) + " as set";
        boolean reachable = reach.isPresent()
                && reach.get().low() <= wanted.value()
                && wanted.value() <= reach.get().high();
        String remark = reachable ? now + "; " + reach.get().part() + " brings it there" : now;
        add("carrier", wanted.toString(), carrier, reachable ? Outcome.MEETS : Outcome.FAILS, remark);
    }

    /** The strongest harmonic of the current in the coil that radiates: the loopstick, else the coil with the largest current. */
    private void harmonics(Optional<Quantity> wanted, Prediction.Oscillation oscillation) {
        Optional<Prediction.Spectrum> output = Output.spectrum(build, oscillation.spectra());
        if (output.isEmpty()) return;
        Figure.Known worst = null;
        for (Figure harmonic : output.get().harmonics()) {
            if (harmonic instanceof Figure.Known known && (worst == null || known.value() > worst.value()))
                worst = known;
        }
        double limit = wanted.map(Quantity::value).orElse(USUAL_HARMONICS);
        String words = Engineering.exact(limit, Unit.DECIBEL) + "c or lower" + (wanted.isEmpty() ? " (usual)" : "");
        if (worst == null) {
            // each of them lies below what the accuracy vouches for, which is itself below any limit worth writing down
            if (output.get().harmonics().isEmpty()) return;
            Outcome outcome = limit >= LOWEST_FLOOR ? Outcome.MEETS : Outcome.UNKNOWN;
            add(
                    "harmonics",
                    words,
                    output.get().harmonics().get(0),
                    outcome,
                    output.get().quantity());
            return;
        }
        add("harmonics", words, worst, below(worst, limit), output.get().quantity());
    }

    private static Outcome below(Figure.Known found, double limit) {
        if (found.value() > limit) return Outcome.FAILS;
        return found.high() > limit ? Outcome.MAY_FAIL : Outcome.MEETS;
    }

    private static Outcome above(Figure.Known found, double limit) {
        if (found.value() < limit) return Outcome.FAILS;
        return found.low() < limit ? Outcome.MAY_FAIL : Outcome.MEETS;
    }

    private void runtime(Quantity wanted, Prediction.Oscillation oscillation) {
        Figure hours = oscillation.batteryHours();
        Outcome outcome = hours instanceof Figure.Known known ? above(known, wanted.value()) : Outcome.UNKNOWN;
        add("runtime", wanted + " or longer", hours, outcome, "");
    }

    private void modulation(Quantity wanted, Prediction.Modulation modulation) {
        if (!(modulation instanceof Prediction.Curve curve)) {
            String why = modulation instanceof Prediction.NoCurve none ? none.reason() : "no curve";
            add("modulation", wanted.toString(), new Figure.Missing("modulation", why), Outcome.UNKNOWN, "");
            return;
        }
        Figure deepest = curve.deepestClean();
        Outcome outcome = deepest instanceof Figure.Known known
                ? (known.value() >= wanted.value() ? Outcome.MEETS : Outcome.FAILS)
                : Outcome.FAILS;
        String limit = Engineering.exact(curve.cleanLimit(), Unit.FRACTION);
        add("modulation", wanted + " under " + limit + " distortion", deepest, outcome, remark(curve.tone()));
    }

    /** Depth and swing of the tone at full level, side by side. */
    private static String remark(ToneAnswer tone) {
        if (tone instanceof ToneAnswer.NoTone none) return "by the static curve; a 1 kHz tone: " + none.reason();
        Modulated at = (Modulated) tone;
        return "by the static curve; 1 kHz at full level: +" + brief(at.positivePeak()) + ", −"
                + brief(at.negativePeak()) + " with " + brief(at.distortion()) + " distortion and " + brief(at.swing())
                + " swing";
    }

    /** Tolerances are not in it: three figures are enough for a look. */
    private static String brief(Figure figure) {
        return figure instanceof Figure.Known known
                ? Engineering.print(known.value(), known.unit(), BRIEF)
                : figure.text();
    }
}
