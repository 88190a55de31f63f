/**
 * Hearing a build: a programme through its audio path, modulator and tank, and through a set that receives it.
 *
 * <p>The full circuit is far too slow for that. {@link galena.build.listen.Reduction} takes from it, by solving it, three things:
 * the audio path's response up to what modulates, a curve of carrier amplitude and frequency against that, and the sidebands'
 * response of the tank; {@link galena.build.listen.ReducedModel} runs them in this order, sample by sample. {@link
 * galena.build.listen.Agreement} holds it against the full envelope at several levels and tones, so that its error is measured and
 * never supposed. What it leaves out is in {@code docs/listen.md}.
 *
 * <p>Levels: full scale of a recording is the audio source's peak level. Absent on purpose: files (signal.audio), sets
 * (signal.receiver), the words of a report. Open first: {@link galena.build.listen.Listen}.
 */
@NullMarked
package galena.build.listen;

import org.jspecify.annotations.NullMarked;
