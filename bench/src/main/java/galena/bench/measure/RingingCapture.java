package galena.bench.measure;

import galena.bench.capture.Capture;
import galena.bench.capture.Captures;
import galena.bench.capture.IqRecord;
import galena.bench.capture.Overrides;
import galena.bench.capture.UnreadableCapture;
import galena.bench.capture.Waveforms;
import galena.signal.carrier.RingDown;
import galena.signal.carrier.Samples;
import java.nio.file.Path;

/**
 * A capture of a tuned circuit that rings by itself.
 *
 * @param ringDown frequency and Q
 * @param layout as which the file was read
 */
public record RingingCapture(RingDown ringDown, String layout) {
    /**
     * Reads the first channel.
     *
     * @throws UnreadableCapture when the file is no capture, or nothing rings in it
     */
    public static RingingCapture of(Path file, Overrides overrides) throws UnreadableCapture {
        Capture capture = Captures.read(file, overrides);
        return new RingingCapture(
                RingDown.of(samples(capture, file))
                        .orElseThrow(() -> new UnreadableCapture(
                                file.toString(),
                                "nothing in it rings and dies away",
                                "Strike the circuit through a small capacitor and record until the trace is flat")),
                capture.understanding().layout());
    }

    private static Samples samples(Capture capture, Path file) throws UnreadableCapture {
        if (capture.content() instanceof Waveforms waves)
            return Samples.real(waves.channels().get(0).samples(), waves.interval());
        if (capture.content() instanceof IqRecord iq)
            return Samples.complex(iq.inPhase().samples(), iq.quadrature().samples(), iq.interval());
        throw new UnreadableCapture(
                file.toString(), "it holds no waveform", "Record the voltage across the circuit against time");
    }
}
