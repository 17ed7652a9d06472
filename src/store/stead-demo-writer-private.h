/* stead-demo-writer-private.h - what writes the demo farm's story down. */
#pragma once

#include "core/stead-quantity.h"
#include "store/stead-demo-private.h"

G_BEGIN_DECLS

/* The fish and their water, the crops and their house, the young hens: as they really are. */
typedef struct _SteadDemoLoop SteadDemoLoop;
typedef struct _SteadDemoBay SteadDemoBay;
typedef struct _SteadDemoChicks SteadDemoChicks;

typedef struct
{
  SteadDemoStory  *story;
  SteadStore      *store;
  GHashTable      *ids;         /* "item Layer feed": gint64, in a pointer */
  GPtrArray       *students;    /* of SteadDemoStudent */
  gint64           advisor_id;
  gint64           helper_id;
  gint64           flock_id;
  SteadDemoLoop   *loop;
  SteadDemoBay    *bay;
  SteadDemoChicks *chicks;
  guint            next_buy;
  guint            next_use;
  int              at;          /* the day being lived */
} SteadDemoWriter;

typedef struct
{
  gint64   id;
  SteadDay from;
  SteadDay to;
} SteadDemoStudent;

/* Something to do within one action. */
typedef gboolean (*SteadDemoDeed) (SteadDemoWriter *writer, gconstpointer what, GError **error);

/* One action around @deed. */
gboolean         stead_demo_act          (SteadDemoWriter *writer, const char *name, SteadDemoDeed deed,
                                          gconstpointer what, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* One action for each group of a kind. */
gboolean         stead_demo_write_groups (SteadDemoWriter *writer, const char *kind, SteadDemoDeed deed,
                                          GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* The reader's first fault becomes the error of the whole. */
gboolean         stead_demo_sound        (SteadDemoWriter *writer, GError **error) G_GNUC_WARN_UNUSED_RESULT;
SteadDay         stead_demo_day_at       (SteadDemoWriter *writer, int at);
/* Ids of what was written, by group; a name that was not is a fault. */
gint64           stead_demo_id_of        (SteadDemoWriter *writer, const char *kind, const char *name);
void             stead_demo_set_id       (SteadDemoWriter *writer, const char *group, gint64 id);
/* The place of a word in @words, 0 if it is none of them; a fault then. */
int              stead_demo_word_of      (SteadDemoWriter *writer, const char *group, const char *key,
                                          const char * const *words);
/* (nullable): a fault then */
const SteadUnit *stead_demo_unit_of      (SteadDemoWriter *writer, const char *group);

/* Settings, people, places, items; then the flock, what lasts, and the first feed. */
gboolean         stead_demo_begin_farm   (SteadDemoWriter *writer, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean         stead_demo_begin_flock  (SteadDemoWriter *writer, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Who writes things down on a day. */
gint64           stead_demo_person_on    (SteadDemoWriter *writer, int at);
SteadDemoLoop   *stead_demo_loop_new     (SteadDemoWriter *writer) G_GNUC_WARN_UNUSED_RESULT;
void             stead_demo_loop_free    (SteadDemoLoop *loop);
gboolean         stead_demo_live_loop    (SteadDemoWriter *writer, GError **error) G_GNUC_WARN_UNUSED_RESULT;
SteadDemoBay    *stead_demo_bay_new      (SteadDemoWriter *writer) G_GNUC_WARN_UNUSED_RESULT;
void             stead_demo_bay_free     (SteadDemoBay *bay);
gboolean         stead_demo_live_bay     (SteadDemoWriter *writer, GError **error) G_GNUC_WARN_UNUSED_RESULT;
SteadDemoChicks *stead_demo_chicks_new   (SteadDemoWriter *writer) G_GNUC_WARN_UNUSED_RESULT;
void             stead_demo_chicks_free  (SteadDemoChicks *chicks);
gboolean         stead_demo_live_chicks  (SteadDemoWriter *writer, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* A pack of an item comes today, if less of it than @base is on hand. */
gboolean         stead_demo_buy_for      (SteadDemoWriter *writer, const char *item, double base,
                                          GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* How many days after the first one lies @key, which counts back from today; @missing
 * without it. */
int              stead_demo_days_back    (SteadDemoWriter *writer, const char *group, const char *key, int missing);
/* Products and prices that begin on the day; a product begins with its first price. */
gboolean         stead_demo_live_prices  (SteadDemoWriter *writer, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
