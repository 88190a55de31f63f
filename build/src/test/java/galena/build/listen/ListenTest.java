package galena.build.listen;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.sun.management.ThreadMXBean;
import galena.build.DemoBuild;
import galena.build.figure.Figure;
import galena.build.folder.BuildFolder;
import galena.build.folder.Overlay;
import galena.build.predict.Progress;
import galena.build.predict.Running;
import galena.engine.steady.Accuracy;
import galena.signal.audio.InventedProgramme;
import java.io.InputStream;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

/** The reduced model beside the full envelope, and what is heard through it. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class ListenTest {
    /** A fifth of a point of depth, and as much of distortion: what the ear forgives many times over. */
    private static final double POINTS = 2e-3;

    private static final double RATE = 48_000;

    private Running demo;
    private Listen heard;
    private Running limited;
    private Listen limitedHeard;

    @BeforeAll
    void listen(@TempDir Path here) throws Exception {
        demo = running(DemoBuild.in(here.resolve("demo")));
        heard = Listen.to(demo, RATE, Progress.SILENT);
        Files.createDirectories(here.resolve("limited"));
        try (InputStream in = ListenTest.class.getResourceAsStream("/builds/limited.yaml")) {
            assertThat(in).isNotNull();
            Files.copy(in, here.resolve("limited/build.yaml"));
        }
        limited = running(BuildFolder.open(here.resolve("limited")));
        limitedHeard = Listen.to(limited, 44_100, Progress.SILENT);
    }

    private static Running running(BuildFolder folder) throws Exception {
        return Running.of(folder.build(), Overlay.NONE, Accuracy.LIVE, Progress.SILENT);
    }

    @Test
    void the_reduced_model_agrees_with_the_full_envelope() {
        for (Listen each : new Listen[] {heard, limitedHeard}) {
            assertThat(each.agreements()).hasSizeGreaterThanOrEqualTo(3);
            for (Agreement a : each.agreements()) {
                assertThat(a.reduced()).as("%s", a).isCloseTo(a.full(), within(POINTS));
                assertThat(a.reducedDistortion()).as("%s", a).isCloseTo(a.fullDistortion(), within(POINTS));
            }
        }
    }

    @Test
    void limiter_diodes_show_as_distortion_at_full_level_and_hardly_at_half() {
        double half = 0, full = 0;
        for (Agreement a : limitedHeard.agreements()) {
            if (Math.abs(a.tone() - 1000) > 20) continue;
            if (a.level() < 1) half = a.reducedDistortion();
            else full = a.reducedDistortion();
        }
        assertThat(full).isGreaterThan(3 * half).isGreaterThan(0.02);
    }

    @Test
    void a_set_narrows_what_is_sent_and_its_figures_are_all_there() {
        Sound sound = heard.sound(SetKind.ROD.settings(0));
        for (Figure figure : sound.figures()) assertThat(figure).isInstanceOf(Figure.Known.class);
        double sent = ((Figure.Known) sound.sentHigh()).value(), rod = ((Figure.Known) sound.heardHigh()).value();
        assertThat(rod).isBetween(3500.0, 4600.0).isLessThan(sent);
        // 1 kHz at the programme's level: what the full envelope gives, from the agreements
        assertThat(((Figure.Known) sound.depth()).value())
                .isCloseTo(heard.agreements().get(1).full(), within(POINTS));
        assertThat(sound.hum()).isEmpty();
    }

    @Test
    void ripple_on_the_supply_is_hum_on_amplitude_and_frequency() {
        Sound sound = limitedHeard.sound(SetKind.ROD.settings(0));
        assertThat(sound.hum()).hasSize(4);
        assertThat(sound.hum()).allMatch(f -> ((Figure.Known) f).value() > 0);
        Listening stream = limitedHeard.through(SetKind.ROD.settings(0), 0);
        double[] silence = new double[Listening.BLOCK], out = new double[Listening.BLOCK];
        double re = 0, im = 0;
        int n = 0;
        for (int block = 0; block < 60; block++) {
            stream.process(silence, silence, Listening.BLOCK, out);
            if (block < 17) continue; // 0.8 s: faded in, and 2 s left of whole periods of 50 Hz
            for (int k = 0; k < Listening.BLOCK && n < 2 * 44_100 - 882; k++, n++) {
                double angle = 2 * Math.PI * 100 * n / 44_100;
                re += out[k] * Math.cos(angle);
                im += out[k] * Math.sin(angle);
            }
        }
        double heardHum = 2 * Math.hypot(re, im) / n;
        double depth = ((Figure.Known) sound.hum().get(2)).value();
        // half of full scale for full modulation; the coupling behind the detector takes 2 % at 100 Hz, gain control
        // some
        assertThat(heardHum).isBetween(0.4 * depth, 0.51 * depth);
    }

    @Test
    void left_and_right_sum_and_a_difference_cancels() {
        Listening both = limitedHeard.through(SetKind.TABLE.settings(0), 0);
        Listening apart = limitedHeard.through(SetKind.TABLE.settings(0), 0);
        double[] tone = new double[Listening.BLOCK], opposite = new double[Listening.BLOCK];
        double[] out = new double[Listening.BLOCK], none = new double[Listening.BLOCK];
        double loud = 0, quiet = 0;
        for (int block = 0; block < 40; block++) {
            for (int k = 0; k < tone.length; k++) {
                tone[k] = 0.2 * Math.sin(2 * Math.PI * 1000 * (block * (double) Listening.BLOCK + k) / 44_100);
                opposite[k] = -tone[k];
            }
            both.process(tone, tone, tone.length, out);
            apart.process(tone, opposite, tone.length, none);
            if (block < 30) continue;
            for (int k = 0; k < tone.length; k++) {
                loud = Math.max(loud, Math.abs(out[k]));
                quiet = Math.max(quiet, Math.abs(none[k]));
            }
        }
        assertThat(loud).isGreaterThan(0.03);
        assertThat(quiet).as("hum alone").isLessThan(0.1 * loud);
    }

    @Test
    void the_invented_programme_is_heard_and_stays_below_the_ceiling() throws Exception {
        InventedProgramme programme = new InventedProgramme(RATE);
        Listening stream = heard.through(SetKind.ROD.settings(0), 0.01);
        double[] left = new double[Listening.BLOCK], right = left.clone(), out = left.clone();
        double most = 0, square = 0;
        for (int n = programme.read(left, right, left.length); n > 0; n = programme.read(left, right, left.length)) {
            stream.process(left, right, n, out);
            for (int k = 0; k < n; k++) {
                most = Math.max(most, Math.abs(out[k]));
                square += out[k] * out[k];
            }
        }
        assertThat(most).isBetween(0.15, 0.9);
        assertThat(square).isGreaterThan(1);
        assertThat(stream.happened().seconds()).isCloseTo(24, within(1e-6));
        assertThat(stream.happened().overmodulation().count()).isZero();
        assertThat(stream.happened().stops().count()).isZero();
    }

    @Test
    void too_loud_a_programme_is_told_by_name_and_time() {
        Listening stream = heard.through(SetKind.TABLE.settings(0), 0);
        double[] tone = new double[Listening.BLOCK], out = tone.clone();
        for (int block = 0; block < 24; block++) {
            for (int k = 0; k < tone.length; k++)
                tone[k] = block < 12 ? 0 : 2.2 * Math.sin(2 * Math.PI * 1500 * (block * 2048.0 + k) / RATE);
            stream.process(tone, tone, tone.length, out);
        }
        Happened happened = stream.happened();
        assertThat(happened.beyond().count()).isEqualTo(1);
        assertThat(happened.beyond().first().get(0)).isCloseTo(12 * 2048 / RATE, within(5e-3));
        assertThat(happened.diagonal().count()).isPositive();
        assertThat(happened.diagonal().seconds()).isPositive();
    }

    @Test
    void blocks_allocate_nothing() {
        Listening stream = heard.through(SetKind.ROD.settings(1000), 0.01);
        double[] left = new double[Listening.BLOCK], out = left.clone();
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        long self = Thread.currentThread().getId(), least = Long.MAX_VALUE;
        for (int round = 0; round < 8; round++) {
            long before = threads.getThreadAllocatedBytes(self);
            for (int k = 0; k < 10; k++) stream.process(left, left, left.length, out);
            least = Math.min(least, threads.getThreadAllocatedBytes(self) - before);
        }
        assertThat(least).isZero();
    }

    @Test
    void a_build_without_audio_has_nothing_to_be_heard(@TempDir Path here) throws Exception {
        BuildFolder silent = DemoBuild.in(
                here.resolve("silent"),
                "{audio: programme, resistance: 600 Ω, plus: line, minus: ground}",
                "{resistor: 600 Ω, from: line, to: ground}");
        Running running = running(silent);
        org.assertj.core.api.Assertions.assertThatThrownBy(() -> Listen.to(running, RATE, Progress.SILENT))
                .isInstanceOf(NothingToHear.class)
                .hasMessageContaining("no audio source");
    }
}
