/**
 * Which channel to take, from what the builder hears, where he lives and what is in his drawer.
 *
 * <p>Belongs here: joining a build's stations, region and drawer to the trade's ranking and search. The weights are {@link
 * galena.trade.channel.ChannelRanking}'s and stand in its page. Promised: every channel of the raster with every reason against
 * it. Absent on purpose: what nobody listed; an empty list of stations ranks by harmonics and receivers alone, and says so.
 * Open first: {@link galena.build.channels.Channels}.
 */
@NullMarked
package galena.build.channels;

import org.jspecify.annotations.NullMarked;
