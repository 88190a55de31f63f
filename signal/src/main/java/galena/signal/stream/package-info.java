/**
 * Sample streams as bytes: number formats, the WAV header, and telling headerless IQ formats apart. Integers are scaled
 * so that full scale is 1. Nothing here opens files: callers hand over streams and bytes.
 * Open first: {@link galena.signal.stream.SampleFormat}.
 */
@NullMarked
package galena.signal.stream;

import org.jspecify.annotations.NullMarked;
