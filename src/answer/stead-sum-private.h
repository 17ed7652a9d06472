/* stead-sum-private.h - sums of money as they are worked out in a "Why?". */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* "$510.20 + $8.00". */
void stead_sum_add   (GString *sum, gint64 cents, const char *currency);
/* "$510.20 − $33.00", and " − $0.00" where nothing goes off. */
void stead_sum_take  (GString *sum, gint64 cents, const char *currency);
/* " = $477.20". */
void stead_sum_total (GString *sum, gint64 cents, const char *currency);

G_END_DECLS
