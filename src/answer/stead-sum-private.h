/* stead-sum-private.h - sums as they are worked out in a "Why?". */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* "$510.20 + $8.00". */
void stead_sum_add   (GString *sum, gint64 cents, const char *currency);
/* "$510.20 − $33.00", and " − $0.00" where nothing goes off. */
void stead_sum_take  (GString *sum, gint64 cents, const char *currency);
/* " = $477.20". */
void stead_sum_total (GString *sum, gint64 cents, const char *currency);

/* Of anything else: "1 h 20 min + 45 min", and " = 2 h 5 min". */
void stead_sum_add_term  (GString *sum, const char *term);
void stead_sum_add_named (GString *sum, const char *name, const char *part);
void stead_sum_end       (GString *sum, const char *total);
/* "3 + 12", and " = 15". */
void stead_sum_add_count (GString *sum, gint64 n);
void stead_sum_take_count (GString *sum, gint64 n);
void stead_sum_end_count (GString *sum, gint64 n);

G_END_DECLS
