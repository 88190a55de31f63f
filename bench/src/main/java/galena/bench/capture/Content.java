package galena.bench.capture;

/** What a capture holds. */
public sealed interface Content permits Waveforms, IqRecord, FrequencyLog, OnePort {}
