/** The small-signal response of a build, drawn. */
@NullMarked
package galena.packet.response;

import org.jspecify.annotations.NullMarked;
