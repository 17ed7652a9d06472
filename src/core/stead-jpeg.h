/* stead-jpeg.h - whether bytes are a JPEG picture, and what in it is not the picture.
 *
 * Only the order of the markers is followed; the picture itself is not decoded.
 * Source: ITU-T T.81 (1992), annex B, figures B.2 and B.3, tables B.1 and B.2.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * stead_jpeg_read_size:
 * @data: (array length=length): any bytes
 * @length: how many
 * @out_width: (out): pixels, from the frame header
 * @out_height: (out): pixels
 *
 * Returns: %TRUE if these are one whole JPEG picture: a start, a frame, a scan, an end
 */
gboolean stead_jpeg_read_size (const guint8 *data,
                               gsize         length,
                               int          *out_width,
                               int          *out_height) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_jpeg_strip:
 * @jpeg: a whole JPEG picture
 *
 * Leaves out what cameras and programs add: place, time, maker, owner, comments
 * (the segments APP1 to APP13, APP15 and COM).  APP0 (density) and APP14 (how the
 * colors are to be understood) are part of showing the picture and stay.
 *
 * Returns: (transfer full): the picture without them; @jpeg itself if there were none,
 *   or if it is no JPEG picture
 */
GBytes  *stead_jpeg_strip     (GBytes       *jpeg) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
