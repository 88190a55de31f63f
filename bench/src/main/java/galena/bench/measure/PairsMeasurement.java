package galena.bench.measure;

import galena.bench.capture.Waveforms;
import galena.signal.modulation.PairedEnvelope;
import java.util.Optional;

/** Lowest and highest values in pairs: an envelope without a spectrum. */
final class PairsMeasurement {
    private PairsMeasurement() {}

    static void into(Sheet sheet, Waveforms waves) {
        String why = "lowest and highest values hold no phase";
        sheet.miss("carrier.frequency", "carrier", "Hz", why);
        sheet.miss("swing", "swing, peak", "Hz", why);
        sheet.miss("harmonics", "harmonics of the carrier", "dBc", why);
        Optional<PairedEnvelope> envelope =
                PairedEnvelope.of(waves.channels().get(0).samples(), waves.interval());
        if (envelope.isEmpty()) {
            sheet.find(
                    Finding.Kind.NO_STEADY_TONE,
                    "No steady tone in the pairs: feed 1 kHz and record three periods or more");
            sheet.miss("depth.positive", "positive peak", "%", "needs one steady tone");
            sheet.miss("depth.negative", "negative peak", "%", "needs one steady tone");
            return;
        }
        PairedEnvelope e = envelope.get();
        String how = "half the distance within each pair, which noise widens a little; past 100 % it folds over";
        sheet.addOf("audio", "tone.frequency", "tone", e.tone(), "Hz", "fitted with its harmonics");
        sheet.addShare("depth.positive", "positive peak", e.positivePeak(), how);
        sheet.addShare("depth.negative", "negative peak", e.negativePeak(), how);
        sheet.addShare(
                "distortion", "envelope distortion", e.distortion(), "harmonics over the fundamental, from pairs");
    }
}
