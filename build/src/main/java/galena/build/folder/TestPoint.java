package galena.build.folder;

import java.util.Optional;

/**
 * A place where the builder measures.
 *
 * @param name the builder's name for it
 * @param at the net probed
 * @param to the net against which it is measured
 * @param probe what is put there while measuring, if it is known; it loads the circuit only while it is connected
 */
public record TestPoint(String name, String at, String to, Optional<Probe> probe) {}
