/**
 * Where a number comes from, and the reading of data tables whose every row says so.
 *
 * <p>Belongs here: {@link galena.trade.source.Basis} and {@link galena.trade.source.Provenance}, which every figure of
 * the trade's data carries, and {@link galena.trade.source.DataTable}, which reads the tables shipped with Galena. Does
 * not belong here: what any number means. Promise: a damaged table is refused with its file, line and column; nothing
 * is skipped. Open first: {@link galena.trade.source.Basis}.
 */
@NullMarked
package galena.trade.source;

import org.jspecify.annotations.NullMarked;
