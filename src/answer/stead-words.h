/* stead-words.h - words and numbers that every sentence shares.
 *
 * A sentence is one translated whole with its numbers put in; no sentence is
 * glued from parts.  Where a number deserves weight the sentence carries Pango
 * markup with <b> alone; stead_words_plain() gives the text for screen readers,
 * papers without weight, and programs.
 */
#pragma once

#include "core/stead-calendar.h"
#include "core/stead-quantity.h"
#include "store/stead-flock-repo.h"
#include "store/stead-product-repo.h"

G_BEGIN_DECLS

/* "46 dozen", "1 jar", by the number; @count may have fractions ("12.5 dozen"). */
char *stead_words_units (SteadPack pack,
                         double    count) G_GNUC_WARN_UNUSED_RESULT;

/* "a dozen", "a jar": after a price. */
const char *stead_words_per_unit (SteadPack pack);

/* "One dozen", "One jar": head of the cost sheet. */
const char *stead_words_one_unit (SteadPack pack);

/* "dozens", "jars": title of an axis. */
const char *stead_words_unit_plural (SteadPack pack);

/* Pack as a choice in a list: "Dozen eggs", "Tray of 30 eggs", "Jar". */
const char *stead_words_pack_name (SteadPack pack);

/* "83 %" as the locale writes it, from 0.83. */
char *stead_words_percent (double frac,
                           int    digits) G_GNUC_WARN_UNUSED_RESULT;

/* A chance: as a percentage, but never surer than it is: "under 1 %", "over 99 %". */
char *stead_words_chance (double frac) G_GNUC_WARN_UNUSED_RESULT;

/* A count of eggs, hens, fish, days with its plural: "22 eggs", "1 hen", "9 days". */
char *stead_words_eggs (gint64 n) G_GNUC_WARN_UNUSED_RESULT;
char *stead_words_hens (gint64 n) G_GNUC_WARN_UNUSED_RESULT;
char *stead_words_fish (gint64 n) G_GNUC_WARN_UNUSED_RESULT;
char *stead_words_birds (gint64 n) G_GNUC_WARN_UNUSED_RESULT;
/* "30 hens"; "30 birds" of any other kind. */
char *stead_words_flock (SteadSpecies species, gint64 n) G_GNUC_WARN_UNUSED_RESULT;
char *stead_words_days (gint64 n) G_GNUC_WARN_UNUSED_RESULT;

/* Markup with <b> to plain text. */
char *stead_words_plain (const char *markup) G_GNUC_WARN_UNUSED_RESULT;

/* A worked "Why?": what is computed, with the farm's own numbers put in, and the source. */
typedef struct
{
  char *title;     /* "Cost of feed in one dozen" */
  char *formula;   /* in words: "cost of the feed ÷ dozens that can be sold" */
  char *worked;    /* "$139.20 ÷ 95.4 dozen = $1.46" */
  char *source;    /* where the rule is from */
} SteadWhy;

void stead_why_free (SteadWhy *why);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadWhy, stead_why_free)

/* (transfer full) (element-type SteadWhy): none yet */
GPtrArray *stead_whys_new (void) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
