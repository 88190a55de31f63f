/**
 * Captures of any layout, found by looking at the file and not by knowing the instrument: delimited text in all its forms,
 * logs with time stamps, WAV, IQ with and without a header, SigMF (open specification), one-port analyser text.
 *
 * <p>Promised: a capture comes with what was understood of it, in words, and each guess can be overridden; files are
 * streamed, so memory does not grow with their length (the first samples are kept, up to {@link
 * galena.bench.capture.Overrides#keep}); what cannot be read ends in one {@link
 * galena.bench.capture.UnreadableCapture} that names place, cause and remedy. Absent: what the samples mean, which is
 * {@code galena.bench.measure}.
 *
 * <p>Open first: {@link galena.bench.capture.Captures}; for text {@code TextLayout}, where the looking is done.
 */
@NullMarked
package galena.bench.capture;

import org.jspecify.annotations.NullMarked;
