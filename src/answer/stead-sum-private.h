/* stead-sum-private.h - sums of money as they are worked out in a "Why?". */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* "$510.20 − $33.00", and then " = $477.20". */
void stead_sum_add   (GString    *sum,
                      gint64      cents,
                      const char *currency);
void stead_sum_total (GString    *sum,
                      gint64      cents,
                      const char *currency);

G_END_DECLS
