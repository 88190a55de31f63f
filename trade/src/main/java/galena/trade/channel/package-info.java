/**
 * Choosing a channel, and finding out of a box of parts what lands on one.
 *
 * <p>Belongs here: rasters ({@link galena.trade.channel.Raster}); the ranking of channels by what is heard on and beside
 * them by day and night, by harmonics and by what receivers do of themselves ({@link galena.trade.channel.ChannelRanking});
 * the search through crystals, resonators and dividers ({@link galena.trade.channel.BoxSearch}). Does not belong here: how
 * far a carrier reaches, and the rules but for restricted bands. A ranking weighs nuisances with stated points; the points
 * are a judgement of ours, the frequencies are arithmetic. Open first: {@link galena.trade.channel.ChannelRanking}.
 */
@NullMarked
package galena.trade.channel;

import org.jspecify.annotations.NullMarked;
