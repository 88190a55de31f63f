package galena.engine.steady;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import galena.engine.HardCases;
import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.startup.Startup;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Curves of an oscillation against a voltage: to where it quits softly, and round the fold where it breaks off. */
class ContinuationTest {
    private static OperatingPoint.Found point(Circuit circuit) {
        return (OperatingPoint.Found) OperatingPointLadder.climb(Equations.of(circuit));
    }

    private static double margin(double volts) {
        return Startup.readiest(point(HardCases.onSupply(volts))).orElseThrow().margin();
    }

    private static OrbitFigure across(SteadyState.Found found) {
        return OrbitFigure.amplitude(found.site().a(), found.site().b(), 1);
    }

    /** An oscillator that fades with its supply stops where the small oscillation about rest neither grows nor dies. */
    @Test
    void a_fading_oscillation_quits_where_its_startup_margin_is_zero() {
        double dead = 1.5, alive = 3;
        for (int k = 0; k < 40; k++) {
            double middle = (dead + alive) / 2;
            if (margin(middle) < 0) dead = middle;
            else alive = middle;
        }
        OperatingPoint.Found point = point(HardCases.onSupply(6));
        SteadyState.Found start = (SteadyState.Found) new SteadyOscillation(Accuracy.LIVE)
                .solve(point, Startup.readiest(point).orElseThrow());
        Continuation.Curve curve = new Continuation(across(start), 3, 80, Watch.NONE)
                .follow(volts -> Equations.of(HardCases.onSupply(volts)), 6, 0.5, Followed.of(start));
        assertThat(curve.end()).isEqualTo(Continuation.End.QUITS);
        assertThat(curve.folds()).isEmpty();
        assertThat(curve.endsAt()).isCloseTo(alive, within(1e-3 * alive));
        assertThat(curve.points()).hasSizeLessThan(60);
    }

    /**
     * A stage held beyond pinch-off: with more bias the settled orbit and the threshold beneath it come together in a fold. The curve
     * goes round it and comes back along the thresholds, which another method finds as well.
     */
    @Test
    void a_curve_goes_round_its_fold_and_comes_back_along_the_thresholds() {
        double bias = 3.2, load = 50e3, leak = 220e3;
        AllOrbits.Answer answer =
                new AllOrbits(Accuracy.LIVE, Watch.NONE).of(point(HardCases.heldBeyondPinchOff(bias, load, leak)));
        SteadyState.Found settled = answer.orbits().get(0).state();
        Continuation.Curve curve = new Continuation(across(settled), 3, 120, Watch.NONE)
                .follow(
                        volts -> Equations.of(HardCases.heldBeyondPinchOff(volts, load, leak)),
                        bias,
                        40,
                        Followed.of(settled));
        assertThat(curve.folds()).isNotEmpty();
        double fold = curve.firstFold().orElseThrow();
        assertThat(fold).isGreaterThan(bias);
        List<Continuation.Point> back =
                curve.points().subList(curve.folds().get(0), curve.points().size());
        double there = 0;
        for (int k = 1; k < back.size(); k++) {
            Continuation.Point a = back.get(k - 1), b = back.get(k);
            if (a.parameter() < bias || b.parameter() > bias) continue;
            there = a.figure() + (bias - a.parameter()) / (b.parameter() - a.parameter()) * (b.figure() - a.figure());
        }
        SteadyState.Found threshold = answer.thresholds().get(0);
        assertThat(there).isCloseTo(across(threshold).of(threshold.waveforms()), within(0.02 * there));
        // on either side of the fold's bias there is an oscillation, or none
        assertThat(new AllOrbits(Accuracy.LIVE, Watch.NONE)
                        .of(point(HardCases.heldBeyondPinchOff(fold * 0.995, load, leak)))
                        .verdict())
                .isEqualTo(AllOrbits.Verdict.ONLY_IF_KICKED);
        assertThat(new AllOrbits(Accuracy.LIVE, Watch.NONE)
                        .of(point(HardCases.heldBeyondPinchOff(fold * 1.005, load, leak)))
                        .verdict())
                .isEqualTo(AllOrbits.Verdict.DECAYS);
    }
}
