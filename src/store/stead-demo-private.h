/* stead-demo-private.h - the parts of the demo farm's story.
 *
 * The description is read, the days are made up in order (stead-demo-days.c),
 * what had to be bought for them follows (stead-demo-buy.c), and the whole is
 * written down day by day through the repositories (stead-demo-write.c).
 */
#pragma once

#include <gsl/gsl_rng.h>

#include "store/stead-flock-repo.h"
#include "store/stead-store.h"

G_BEGIN_DECLS

/* Reads a description; the first fault is kept, and later reads give nothing. */
typedef struct
{
  GKeyFile *keys;
  GError   *error;
} SteadDemoReader;

char    *stead_demo_text   (SteadDemoReader *reader, const char *group, const char *key) G_GNUC_WARN_UNUSED_RESULT;
/* As above, but %NULL or @missing if the key is not there. */
char    *stead_demo_text_if   (SteadDemoReader *reader, const char *group, const char *key) G_GNUC_WARN_UNUSED_RESULT;
double   stead_demo_number_if (SteadDemoReader *reader, const char *group, const char *key, double missing);
double   stead_demo_number (SteadDemoReader *reader, const char *group, const char *key);
gint64   stead_demo_cents  (SteadDemoReader *reader, const char *group, const char *key);
/* Parts without blanks at their ends; never %NULL. */
char   **stead_demo_list   (SteadDemoReader *reader, const char *group, const char *key) G_GNUC_WARN_UNUSED_RESULT;
/* "4.50" in cents; faults are kept. */
gint64   stead_demo_cents_of  (SteadDemoReader *reader, const char *text);
double   stead_demo_number_of (SteadDemoReader *reader, const char *text);
/* Groups whose names begin with @kind and a blank. */
char   **stead_demo_groups (SteadDemoReader *reader, const char *kind) G_GNUC_WARN_UNUSED_RESULT;
/* The part of a group's name after its kind. */
const char *stead_demo_group_name (const char *group);
void     stead_demo_fault  (SteadDemoReader *reader, const char *group, const char *key);

/* One day at the hen house. */
typedef struct
{
  int       eggs;        /* -1: a day on which nothing was written down */
  int       later_eggs;  /* of them, collected a second time */
  int       cracked;
  int       deaths;
  double    feed_lb;     /* 0: not written down */
  char     *note;
  gboolean  left_out;
  gboolean  kept;        /* too much happened for nobody to write it down */
} SteadDemoDay;

/* One purchase, or a gift, of one item. */
typedef struct
{
  int       day;         /* days since the first hen; may be negative */
  char     *item;
  int       packs;
  gint64    cents;       /* for all packs */
  char     *from;
  gboolean  is_gift;
  char     *note;        /* (nullable) */
} SteadDemoBuy;

/* Taken out of the store room on one day: by the hens, or with what was sold. */
typedef struct
{
  int       day;
  char     *item;
  double    quantity;    /* in the unit of the item */
  gboolean  is_sold;
} SteadDemoUse;

/* Packs of eggs sold on one day. */
typedef struct
{
  int       day;
  char     *product;     /* group of the description */
  int       packs;
} SteadDemoSale;

typedef struct
{
  SteadDemoReader  reader;
  gsl_rng         *rng;
  SteadDay         today;
  SteadDay         first;      /* the hens move in */
  int              n_days;     /* from the first day up to yesterday */
  SteadDemoDay    *days;
  GPtrArray       *buys;       /* of SteadDemoBuy, by day */
  GPtrArray       *uses;       /* of SteadDemoUse, by day */
  GPtrArray       *sales;      /* of SteadDemoSale, by day */
  double           spilled_lb; /* feed lost on the first day, so that the bags come out even */
} SteadDemoStory;

/* Each returns %FALSE once the reader has a fault. */
gboolean stead_demo_make_days (SteadDemoStory *story);
gboolean stead_demo_make_buys (SteadDemoStory *story);
gboolean stead_demo_write     (SteadDemoStory *story, SteadStore *store, GError **error) G_GNUC_WARN_UNUSED_RESULT;

void stead_demo_buy_free (SteadDemoBuy *buy);
void stead_demo_use_free (SteadDemoUse *use);
void stead_demo_sale_free (SteadDemoSale *sale);

/* The day, on or before @today less @back, that falls on "01-18" in its year. */
SteadDay stead_demo_day_of_year (SteadDemoStory *story, const char *group, const char *text, int back);

G_END_DECLS
