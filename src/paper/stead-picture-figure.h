/* stead-picture-figure.h - a picture out of the farm file, as a figure on pages.
 *
 * The JPEG goes into a PDF as it is, so that the file stays small.
 */
#pragma once

#include "paper/stead-pages.h"

G_BEGIN_DECLS

/**
 * stead_picture_figure_add:
 * @jpeg: the picture
 * @most_height: points; it is drawn no higher, no wider than the page, and no larger
 *   than 96 of its dots to the inch
 *
 * Returns: %FALSE, with nothing added, if @jpeg is no picture that can be read
 */
gboolean stead_picture_figure_add (SteadPages *pages,
                                   GBytes     *jpeg,
                                   double      most_height);

G_END_DECLS
