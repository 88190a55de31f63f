package galena.bench.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import galena.bench.capture.OnePort;
import galena.bench.measure.HumDiagnosis.Answer;
import galena.bench.measure.HumDiagnosis.Answers;
import galena.bench.measure.HumDiagnosis.Cause;
import galena.proof.Kind;
import galena.proof.Published;
import galena.signal.Estimate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

class SmallSumsTest {
    private static final int TRIALS = 200;

    private static Estimate near(double value, double relative) {
        return new Estimate(value, value * (1 - relative), value * (1 + relative));
    }

    private static double resonance(double henry, double farad) {
        return 1 / (2 * Math.PI * Math.sqrt(henry * farad));
    }

    @Test
    void two_frequencies_give_back_the_coil_and_everything_across_it() {
        double l = 180e-6, c = 141e-12, added = 100e-12;
        AddedCapacitor found =
                AddedCapacitor.of(near(resonance(l, c), 1e-6), near(resonance(l, c + added), 1e-6), near(added, 1e-6));
        Published.source(
                        "bench",
                        Kind.CLOSED_FORM,
                        "Thomson's formula f = 1/(2π √(LC)), solved for L and C from two frequencies")
                .matchesRelative("coil of 180 µH, H", l, found.inductance().value(), 1e-9)
                .matchesRelative("141 pF across it, F", c, found.capacitance().value(), 1e-9);
        assertThatThrownBy(() -> AddedCapacitor.of(near(1e6, 0.01), near(0.99e6, 0.01), near(added, 0.01)))
                .hasMessageContaining("larger one");
    }

    @Test
    void intervals_of_the_small_sums_hold_the_truth() {
        Random random = new Random(5);
        int coil = 0, capacitance = 0, stray = 0, width = 0, depth = 0;
        double sigmaC = 0.01 / Estimate.NORMAL_95, sigmaF = 200 / Estimate.NORMAL_95;
        for (int k = 0; k < TRIALS; k++) {
            double l = 180e-6, c = 141e-12, added = 100e-12;
            Estimate bare = Estimate.normal(resonance(l, c) + sigmaF * random.nextGaussian(), sigmaF);
            Estimate loaded = Estimate.normal(resonance(l, c + added) + sigmaF * random.nextGaussian(), sigmaF);
            Estimate known = Estimate.normal(added * (1 + sigmaC * random.nextGaussian()), added * sigmaC);
            AddedCapacitor found = AddedCapacitor.of(bare, loaded, known);
            if (found.inductance().covers(l)) coil++;
            if (found.capacitance().covers(c)) capacitance++;
            Estimate fitted = Estimate.normal(120e-12 * (1 + sigmaC * random.nextGaussian()), 120e-12 * sigmaC);
            if (found.stray(fitted).covers(21e-12)) stray++;
            Estimate low = Estimate.normal(994e3 + sigmaF * random.nextGaussian(), sigmaF),
                    high = Estimate.normal(1006e3 + sigmaF * random.nextGaussian(), sigmaF);
            if (ResonanceWidth.q(low, high).covers(Math.sqrt(994e3 * 1006e3) / 12e3)) width++;
            double error = 0.1, s = error / Estimate.NORMAL_95;
            if (ScreenDivisions.of(
                            6.3 + s * random.nextGaussian(), 0.7 + s * random.nextGaussian(), Optional.empty(), error)
                    .depth()
                    .covers(0.8)) depth++;
        }
        for (int hits : new int[] {coil, capacitance, stray, width, depth})
            assertThat(hits).isBetween(182, 198);
    }

    @Test
    void divisions_give_the_depth_of_the_screen() {
        Published.source(
                        "bench",
                        Kind.CLOSED_FORM,
                        "Depth from a screen, m = (A − B)/(A + B); worked rows of the modulation table")
                .matches(
                        "A 1.8, B 0.2",
                        0.8,
                        ScreenDivisions.of(1.8, 0.2, Optional.empty(), 0.05)
                                .depth()
                                .value(),
                        1e-12)
                .matches(
                        "A 3, B 1",
                        0.5,
                        ScreenDivisions.of(3, 1, Optional.empty(), 0.05).depth().value(),
                        1e-12)
                .matches(
                        "positive peak, A 1.9, carrier 1",
                        0.9,
                        ScreenDivisions.of(1.9, 0.3, Optional.of(1.0), 0.05)
                                .positivePeak()
                                .orElseThrow()
                                .value(),
                        1e-12)
                .matches(
                        "negative peak, B 0.3, carrier 1",
                        0.7,
                        ScreenDivisions.of(1.9, 0.3, Optional.of(1.0), 0.05)
                                .negativePeak()
                                .orElseThrow()
                                .value(),
                        1e-12);
        assertThatThrownBy(() -> ScreenDivisions.of(1, 2, Optional.empty(), 0.1))
                .hasMessageContaining("trough not above");
    }

    @Test
    void a_sweep_gives_the_unloaded_q_of_a_coupled_circuit_as_often_as_it_says() {
        Random random = new Random(3);
        int loaded = 0, unloaded = 0, frequency = 0;
        for (int trial = 0; trial < TRIALS; trial++) {
            double f0 = 1e6 + 2e4 * random.nextDouble(),
                    q0 = 60 + 100 * random.nextDouble(),
                    kappa = 0.3 + 1.5 * random.nextDouble(),
                    turn = random.nextDouble();
            List<Double> f = new ArrayList<>(), re = new ArrayList<>(), im = new ArrayList<>();
            for (int k = 0; k <= 200; k++) {
                double hz = 0.9e6 + 1e3 * k, x = q0 * (hz / f0 - f0 / hz);
                double d = (1 + kappa) * (1 + kappa) + x * x,
                        a = ((kappa - 1) * (1 + kappa) - x * x) / d,
                        b = -2 * kappa * x / d;
                f.add(hz);
                re.add(a * Math.cos(turn) - b * Math.sin(turn) + 0.003 * random.nextGaussian());
                im.add(a * Math.sin(turn) + b * Math.cos(turn) + 0.003 * random.nextGaussian());
            }
            ReflectionCircle c =
                    ReflectionCircle.through(new OnePort(f, re, im, 50)).orElseThrow();
            if (c.loadedQ().covers(q0 / (1 + kappa))) loaded++;
            if (c.unloadedQ().covers(q0)) unloaded++;
            if (c.frequency().covers(f0)) frequency++;
        }
        System.out.println("sweep: loaded Q " + loaded + ", unloaded Q " + unloaded + ", frequency " + frequency
                + " of " + TRIALS);
        assertThat(loaded).isBetween(182, 198);
        assertThat(unloaded).isBetween(182, 198);
        assertThat(frequency).isBetween(182, 198);
    }

    @Test
    void four_answers_lead_to_the_cause_of_hum() {
        assertThat(HumDiagnosis.of(new Answers(Answer.YES, Answer.YES, Answer.YES, Answer.UNKNOWN), Optional.of(3.0))
                        .cause())
                .isEqualTo(Cause.HOUSE_WIRING);
        assertThat(HumDiagnosis.of(new Answers(Answer.NO, Answer.YES, Answer.NO, Answer.NO), Optional.of(5.0))
                        .cause())
                .isEqualTo(Cause.SUPPLY_RIPPLE);
        assertThat(HumDiagnosis.of(new Answers(Answer.YES, Answer.NO, Answer.NO, Answer.NO), Optional.empty())
                        .cause())
                .isEqualTo(Cause.AUDIO_LOOP);
        assertThat(HumDiagnosis.of(new Answers(Answer.YES, Answer.YES, Answer.NO, Answer.YES), Optional.of(0.3))
                        .cause())
                .isEqualTo(Cause.INDUCTION_INTO_SET);
        assertThat(HumDiagnosis.of(new Answers(Answer.YES, Answer.YES, Answer.NO, Answer.NO), Optional.of(4.0))
                        .cause())
                .isEqualTo(Cause.SET_ITSELF);
        assertThat(HumDiagnosis.of(new Answers(Answer.YES, Answer.YES, Answer.NO, Answer.NO), Optional.of(0.2))
                        .cause())
                .isEqualTo(Cause.INDUCTION_INTO_SENDER);
        assertThat(HumDiagnosis.of(
                                new Answers(Answer.UNKNOWN, Answer.UNKNOWN, Answer.UNKNOWN, Answer.UNKNOWN),
                                Optional.empty())
                        .remedy())
                .contains("Short the audio input");
    }

    @Test
    void aliases_fold_and_unfold() {
        Published.source(
                        "bench",
                        Kind.CLOSED_FORM,
                        "Sampling theorem: a line at f appears at its distance from the nearest multiple of the rate")
                .matches("1 MHz at 640 kHz, Hz", 280e3, Aliasing.apparent(1e6, 640e3), 1e-6)
                .matches(
                        "and back, Hz",
                        1e6,
                        Aliasing.trueFrequency(280e3, 640e3, 0.99e6, 0.05).orElseThrow(),
                        1e-6);
        assertThat(Aliasing.trueFrequency(280e3, 640e3, 1.2e6, 0.05)).isEmpty();
        assertThat(ResonanceWidth.q(near(990e3, 1e-6), near(1010e3, 1e-6)).value())
                .isCloseTo(49.997, within(0.001));
    }
}
