package galena.bench.measure;

import galena.signal.Estimate;
import galena.signal.carrier.RfHarmonics;
import galena.signal.modulation.EnvelopeFit;
import galena.signal.modulation.ModulatedCarrier;
import java.util.Locale;
import java.util.Optional;

/**
 * What in the figures a builder should mend. The limits are pass lines for small senders, chosen by us where builders'
 * own sources give none; a line is crossed when the whole interval lies beyond it.
 */
final class Judgement {
    /** Peak Hz at which a bare oscillator's set-side tuning starts to suffer. */
    static final double SWING = 1000;
    /** Envelope distortion, a fraction. */
    static final double DISTORTION = 0.05;
    /** Hum over the carrier, a fraction: −40 dB. */
    static final double HUM = 0.01;
    /** Harmonics of the carrier, a fraction: −30 dBc. */
    static final double HARMONIC = 0.0316;
    /** Positive against negative peak, a fraction of the larger. */
    static final double UNEVEN = 0.1;

    private Judgement() {}

    static void of(Sheet sheet, ModulatedCarrier.Found found, double trustDbc) {
        found.envelope().ifPresent(e -> envelope(sheet, e));
        found.swing()
                .filter(s -> s.low() > SWING)
                .ifPresent(s -> sheet.find(
                        Finding.Kind.SWING,
                        String.format(
                                Locale.ROOT,
                                "The frequency swings %.0f Hz in step with the audio: the modulator pulls the oscillator; buffer it, or couple the aerial more loosely",
                                s.value())));
        found.hum().stream()
                .filter(h -> h.ratio().low() > HUM)
                .max((a, b) -> Double.compare(a.ratio().value(), b.ratio().value()))
                .ifPresent(h -> sheet.find(
                        Finding.Kind.HUM,
                        String.format(
                                Locale.ROOT,
                                "Hum at %.0f Hz, %.0f dB below the carrier: try a battery, then short the audio input",
                                h.frequency(),
                                -Sheet.decibels(h.ratio().value()))));
        found.harmonics().stream()
                .filter(h -> h.ratio().low() > Math.max(HARMONIC, Math.pow(10, trustDbc / 20)))
                .max((a, b) -> Double.compare(a.ratio().value(), b.ratio().value()))
                .ifPresent(h -> harmonic(sheet, h));
    }

    private static void harmonic(Sheet sheet, RfHarmonics.Harmonic h) {
        String cause = h.order() % 2 == 0 ? "uneven halves of the wave" : "a wave cut on both sides";
        sheet.find(
                Finding.Kind.HARMONICS,
                String.format(
                        Locale.ROOT,
                        "Harmonic %d stands at %.1f dBc, from %s: less drive, or more loaded Q, before anything that radiates",
                        h.order(),
                        Sheet.decibels(h.ratio().value()),
                        cause));
    }

    private static void envelope(Sheet sheet, EnvelopeFit e) {
        Estimate up = e.positivePeak(), down = e.negativePeak();
        if (down.low() > 1) {
            sheet.find(
                    Finding.Kind.OVERMODULATED,
                    String.format(
                            Locale.ROOT,
                            "Overmodulated: the negative peak reaches %.0f %%, the carrier turns over; turn the audio down",
                            100 * down.value()));
        }
        if (e.distortion().low() > DISTORTION) sheet.find(Finding.Kind.DISTORTED, distortion(e));
        double larger = Math.max(up.value(), down.value()),
                apart = Math.abs(up.value() - down.value()),
                sure = Math.hypot(up.halfWidth(), down.halfWidth());
        if (larger > 0.1 && apart - sure > UNEVEN * larger) {
            sheet.find(
                    Finding.Kind.UNEVEN_PEAKS,
                    String.format(
                            Locale.ROOT,
                            "Peaks are uneven, +%.0f %% and −%.0f %%: move the modulator's operating point",
                            100 * up.value(),
                            100 * down.value()));
        }
    }

    private static String distortion(EnvelopeFit e) {
        double second = e.harmonics() > 1 ? e.relative(2).value() : 0,
                third = e.harmonics() > 2 ? e.relative(3).value() : 0;
        String cause = second > third
                ? (e.negativePeak().value() < e.positivePeak().value()
                                ? "troughs are flattened"
                                : "crests are flattened")
                        + "; move the operating point"
                : "crests and troughs are flattened alike; turn the audio down";
        return String.format(
                Locale.ROOT,
                "Envelope distortion %.1f %% (second %.1f, third %.1f): %s",
                100 * e.distortion().value(),
                100 * second,
                100 * third,
                cause);
    }

    /** Whether anything in the sheet is worth praise: for the verdict. */
    static Optional<String> good(Sheet sheet) {
        Optional<Estimate> f = sheet.known("carrier.frequency");
        if (f.isEmpty()) return Optional.empty();
        Optional<Estimate> up = sheet.known("depth.positive"),
                down = sheet.known("depth.negative"),
                thd = sheet.known("distortion");
        StringBuilder out = new StringBuilder(
                String.format(Locale.ROOT, "A carrier at %.2f kHz", f.get().value() / 1e3));
        if (up.isPresent() && down.isPresent())
            out.append(String.format(
                    Locale.ROOT,
                    " with +%.0f/−%.0f %% modulation",
                    up.get().value(),
                    down.get().value()));
        if (thd.isPresent() && thd.get().high() < 100 * DISTORTION)
            out.append(String.format(
                    Locale.ROOT, ", clean to %.1f %% distortion", thd.get().value()));
        return Optional.of(out.toString());
    }
}
