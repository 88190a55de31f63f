package galena.build.source;

/**
 * The stretch of text that a node occupies.
 *
 * @param place of its first character
 * @param start index of its first character in the text, in code points from 0
 * @param end index behind its last character
 */
public record Span(Place place, int start, int end) {}
