/* stead-demo-writer-private.h - what writes the demo farm's story down. */
#pragma once

#include "core/stead-quantity.h"
#include "store/stead-asset-repo.h"
#include "store/stead-demo-private.h"
#include "store/stead-receipt-repo.h"
#include "store/stead-sale-repo.h"

G_BEGIN_DECLS

/* The fish and their water, the crops and their house, the young hens: as they really are. */
typedef struct _SteadDemoLoop SteadDemoLoop;
typedef struct _SteadDemoBay SteadDemoBay;
typedef struct _SteadDemoChicks SteadDemoChicks;
/* Eggs on their way into lots, recipes and what is cooked of them, and money. */
typedef struct _SteadDemoEggs SteadDemoEggs;
typedef struct _SteadDemoKitchen SteadDemoKitchen;
typedef struct _SteadDemoCash SteadDemoCash;
/* Sale days that were held. */
typedef struct _SteadDemoMarket SteadDemoMarket;

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
  SteadDemoEggs   *eggs;
  SteadDemoKitchen *kitchen;
  SteadDemoCash   *cash;
  SteadDemoMarket *market;
  guint            next_buy;
  guint            next_use;
  guint            next_sale;
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
/* Anybody by name, the rest of the class too; 0 and a fault if there is nobody. */
gint64           stead_demo_person_of    (SteadDemoWriter *writer, const char *name);
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
/* Collected today by a flock; they go into a lot with those of the week. */
void             stead_demo_eggs_laid    (SteadDemoWriter *writer, gint64 flock_id, int eggs, int cracked);
SteadDemoEggs   *stead_demo_eggs_new     (SteadDemoWriter *writer) G_GNUC_WARN_UNUSED_RESULT;
void             stead_demo_eggs_free    (SteadDemoEggs *eggs);
gboolean         stead_demo_live_eggs    (SteadDemoWriter *writer, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Eggs sorted, held to the light and broken out today. */
gboolean         stead_demo_live_grades  (SteadDemoWriter *writer, GError **error) G_GNUC_WARN_UNUSED_RESULT;
SteadDemoKitchen *stead_demo_kitchen_new (SteadDemoWriter *writer) G_GNUC_WARN_UNUSED_RESULT;
void             stead_demo_kitchen_free (SteadDemoKitchen *kitchen);
gboolean         stead_demo_live_kitchen (SteadDemoWriter *writer, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* A deed: the recipe of a group. */
gboolean         stead_demo_write_recipe (SteadDemoWriter *writer, gconstpointer what, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* A deed: throws out what is past its day tomorrow, and buys what would fall short of a making. */
gboolean         stead_demo_shop         (SteadDemoWriter *writer, gconstpointer what, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* The five parts of a step, or a fault. */
char           **stead_demo_step_words   (SteadDemoWriter *writer, const char *group, const char *text) G_GNUC_WARN_UNUSED_RESULT;
/* @quantity is in the unit of the item. */
double           stead_demo_base_of      (SteadDemoWriter *writer, const char *item, double quantity);
SteadDemoCash   *stead_demo_cash_new     (SteadDemoWriter *writer) G_GNUC_WARN_UNUSED_RESULT;
void             stead_demo_cash_free    (SteadDemoCash *cash);
/* Accounts, funds, enterprises; in time for the first thing that is bought. */
gboolean         stead_demo_begin_cash   (SteadDemoWriter *writer, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Pays what is due, and counts and deposits what was taken in. */
gboolean         stead_demo_live_cash    (SteadDemoWriter *writer, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* To be paid in some days: a receipt that was saved within the same action. */
void             stead_demo_cash_owe     (SteadDemoWriter *writer, const SteadReceipt *receipt, const char *item_group);
/* Within the action that made it: pays what a batch of @group began with, and says whose it is. */
gboolean         stead_demo_cash_begin_batch (SteadDemoWriter *writer, const char *group, gint64 batch_id, gint64 cents,
                                              GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean         stead_demo_cash_buy_asset (SteadDemoWriter *writer, const SteadAsset *asset,
                                            GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Says whose a product of @group is. */
gboolean         stead_demo_cash_begin_product (SteadDemoWriter *writer, const char *group, gint64 product_id,
                                                GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Sold today, at the price of the day: so many units of "product Eggs". */
void             stead_demo_cash_sold    (SteadDemoWriter *writer, const char *group, double units);
/* The same for what is sold loose out of the store room: the product that says "item=…" of it. */
void             stead_demo_cash_sold_of (SteadDemoWriter *writer, gint64 item_id, double base);
/* The cash box. */
gint64           stead_demo_cash_till    (SteadDemoWriter *writer);
/* The account in the school's books. */
gint64           stead_demo_cash_office  (SteadDemoWriter *writer);
/* Within an action: brings what was counted to the office, and pays for the table. */
gboolean         stead_demo_cash_before_sale (SteadDemoWriter *writer, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Fills in the fewest coins and notes that make @cents. */
gboolean         stead_demo_cash_pieces  (GArray *pieces_out, const char *currency, gint64 cents,
                                          GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* The coins and notes of "float" in @group. */
void             stead_demo_market_float (SteadDemoWriter *writer, const char *group, SteadSale *sale);
/* A market is held today, with a plan, a tally and a cash-up. */
gboolean         stead_demo_market_is_on (SteadDemoWriter *writer);
/* Sold there today: so many units of "product Eggs"; their lots are taken at the end of the day. */
void             stead_demo_market_sold  (SteadDemoWriter *writer, const char *group, double units);
SteadDemoMarket *stead_demo_market_new   (SteadDemoWriter *writer) G_GNUC_WARN_UNUSED_RESULT;
void             stead_demo_market_free  (SteadDemoMarket *market);
gboolean         stead_demo_live_market  (SteadDemoWriter *writer, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* The refrigerators are read on a school day. */
gboolean         stead_demo_live_coolers (SteadDemoWriter *writer, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Pictures with captions; then skills, events and packets. */
gboolean         stead_demo_write_shots  (SteadDemoWriter *writer, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean         stead_demo_write_learning (SteadDemoWriter *writer, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* The pen to be built, at the end of the story. */
gboolean         stead_demo_plan_builds  (SteadDemoWriter *writer, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* The sale days to come, likewise. */
gboolean         stead_demo_plan_sales   (SteadDemoWriter *writer, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Somebody to work or count with: not the person of the day. */
gint64           stead_demo_second_on    (SteadDemoWriter *writer, int at);
/* Within an action: where a lot of @group lies, if the description says so. */
gboolean         stead_demo_put          (SteadDemoWriter *writer, const char *group, gint64 lot_id,
                                          GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Within an action: a receipt of today with a pack of each item. */
gboolean         stead_demo_buy_packs    (SteadDemoWriter *writer, const char *supplier, const char * const *groups,
                                          GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* How many days after the first one lies @key, which counts back from today; @missing
 * without it. */
int              stead_demo_days_back    (SteadDemoWriter *writer, const char *group, const char *key, int missing);
/* Products and prices that begin on the day; a product begins with its first price. */
gboolean         stead_demo_live_prices  (SteadDemoWriter *writer, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* The rest of the class, its groups, duties and trainings, and a term of hours. */
gboolean         stead_demo_write_class  (SteadDemoWriter *writer, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
