/* stead-demo-write.c - writes the story down, day by day, through the repositories.
 *
 * Each day is lived through: the store's today goes along, and each deed is an
 * ordinary action.  Only the deeds of the last days can be undone afterwards.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "store/stead-asset-repo.h"
#include "store/stead-demo-private.h"
#include "store/stead-farm-repo.h"
#include "store/stead-item-repo.h"
#include "store/stead-lot-repo.h"
#include "store/stead-product-repo.h"
#include "store/stead-receipt-repo.h"
#include "store/stead-store-private.h"

/* Steps of undo that are left are those of so many days. */
#define UNDO_DAYS 2

/* An advisor signs on each such day what is so many days old. */
#define SIGN_STEP_DAYS 30
#define SIGN_AGE_DAYS 20

typedef struct
{
  SteadDemoStory *story;
  SteadStore     *store;
  GHashTable     *ids;         /* "item Layer feed": gint64, in a pointer */
  GPtrArray      *students;    /* of Student */
  gint64          advisor_id;
  gint64          helper_id;
  gint64          flock_id;
  guint           next_buy;
  guint           next_use;
  int             at;          /* the day being lived */
} Writer;

typedef struct
{
  gint64   id;
  SteadDay from;
  SteadDay to;
} Student;

/* Something to do within one action. */
typedef gboolean (*Deed) (Writer *writer, gconstpointer what, GError **error);

static gboolean
act (Writer         *writer,
     const char     *name,
     Deed            deed,
     gconstpointer   what,
     GError        **error)
{
  if (!stead_store_begin (writer->store, name, error))
    return FALSE;
  if (deed (writer, what, error))
    return stead_store_commit (writer->store, error);
  stead_store_rollback (writer->store);
  return FALSE;
}

static SteadDay
day_at (Writer *writer,
        int     at)
{
  return writer->story->first + at;
}

static gint64
id_of (Writer     *writer,
       const char *kind,
       const char *name)
{
  g_autofree char *group = g_strconcat (kind, " ", name, NULL);
  gint64 id = GPOINTER_TO_SIZE (g_hash_table_lookup (writer->ids, group));

  if (id == 0)
    stead_demo_fault (&writer->story->reader, group, name);
  return id;
}

static void
set_id (Writer     *writer,
        const char *group,
        gint64      id)
{
  g_hash_table_insert (writer->ids, g_strdup (group), GSIZE_TO_POINTER ((gsize) id));
}

/* The reader's first fault becomes the error of the whole. */
static gboolean
sound (Writer  *writer,
       GError **error)
{
  if (writer->story->reader.error == NULL)
    return TRUE;
  g_propagate_error (error, g_steal_pointer (&writer->story->reader.error));
  return FALSE;
}

/* The place of @word in @words, 0 if it is none of them; a fault then. */
static int
word_of (Writer             *writer,
         const char         *group,
         const char         *key,
         const char * const *words)
{
  g_autofree char *word = stead_demo_text (&writer->story->reader, group, key);

  for (int i = 0; words[i] != NULL; i++)
    if (strcmp (word, words[i]) == 0)
      return i;
  stead_demo_fault (&writer->story->reader, group, key);
  return 0;
}

/* --- the farm, its people, places and things ---------------------------------------- */

static gboolean
write_farm (Writer         *writer,
            gconstpointer   what,
            GError        **error)
{
  static const char * const units[] = { "us", "metric", NULL };
  SteadDemoReader *reader = &writer->story->reader;
  g_autofree char *name = stead_demo_text (reader, "farm", "name");
  g_autofree char *currency = stead_demo_text (reader, "farm", "currency");
  g_autofree char *school = stead_demo_text (reader, "farm", "school_year");
  SteadDay start = stead_demo_day_of_year (writer->story, "farm", school, 0);
  SteadFarm farm = { .name = name, .currency = currency,
                     .units = (SteadUnitSystem) word_of (writer, "farm", "units", units),
                     .elevation_m = stead_demo_number (reader, "farm", "elevation_m"),
                     .labor_cents_hour = stead_demo_cents (reader, "farm", "labor_hour") };

  if (!sound (writer, error))
    return FALSE;
  stead_day_split (start, NULL, &farm.school_year_month, &farm.school_year_mday);
  return stead_farm_repo_set (writer->store, &farm, error);
}

/* School ends in early June; students come and go with it. */
static SteadDay
graduation (Writer *writer,
            int     years)
{
  int year, month;

  stead_day_split (writer->story->today, &year, &month, NULL);
  return stead_day_new (year + (month >= 6) + years, 6, 5);
}

static void
remember_student (Writer   *writer,
                  gint64    id,
                  SteadDay  to)
{
  Student *student = g_new0 (Student, 1);

  *student = (Student) { id, to - 4 * 365, to };
  g_ptr_array_add (writer->students, student);
}

static gboolean
write_person (Writer         *writer,
              gconstpointer   what,
              GError        **error)
{
  static const char * const roles[] = { "student", "advisor", "helper", NULL };
  const char *group = what;
  SteadDay graduates = graduation (writer, (int) stead_demo_number_if (&writer->story->reader, group,
                                                                       "graduates_in", 0));
  g_autofree char *name = g_strdup (stead_demo_group_name (group));
  SteadPerson person = { .name = name, .left_on = STEAD_DAY_NONE,
                         .role = (SteadPersonRole) word_of (writer, group, "role", roles) };

  if (person.role == STEAD_PERSON_STUDENT)
    {
      stead_day_split (graduates, &person.class_year, NULL, NULL);
      person.left_on = graduates < writer->story->today ? graduates : STEAD_DAY_NONE;
    }
  if (!sound (writer, error) || !stead_person_repo_save (writer->store, &person, error))
    return FALSE;
  if (person.role == STEAD_PERSON_STUDENT)
    remember_student (writer, person.id, graduates);
  else if (person.role == STEAD_PERSON_ADVISOR)
    writer->advisor_id = person.id;
  else
    writer->helper_id = person.id;
  return TRUE;
}

static gboolean
write_place (Writer         *writer,
             gconstpointer   what,
             GError        **error)
{
  static const char * const kinds[] = { "coop", "tank", "bay", "kitchen", "stall", "store", NULL };
  const char *group = what;
  g_autofree char *name = g_strdup (stead_demo_group_name (group));
  SteadPlaceFacts place = { .name = name, .kind = (SteadPlaceKind) word_of (writer, group, "kind", kinds),
                            .area_m2 = stead_demo_number_if (&writer->story->reader, group, "area_m2", NAN) };

  if (!sound (writer, error) || !stead_place_repo_save (writer->store, &place, error))
    return FALSE;
  set_id (writer, group, place.id);
  return TRUE;
}

static const SteadUnit *
unit_of (Writer     *writer,
         const char *group)
{
  g_autofree char *id = stead_demo_text (&writer->story->reader, group, "unit");
  const SteadUnit *unit = stead_unit_by_id (id);

  if (unit == NULL)
    stead_demo_fault (&writer->story->reader, group, "unit");
  return unit;
}

static gboolean
write_item (Writer         *writer,
            gconstpointer   what,
            GError        **error)
{
  static const char * const kinds[] = { "feed", "bedding", "packaging", "ingredient", "seed", "supply", NULL };
  const char *group = what;
  SteadDemoReader *reader = &writer->story->reader;
  g_autofree char *name = g_strdup (stead_demo_group_name (group));
  g_autofree char *storage = stead_demo_text_if (reader, group, "storage");
  const SteadUnit *unit = unit_of (writer, group);
  double reorder = stead_demo_number_if (reader, group, "reorder", NAN);
  SteadItem item = { .name = name, .storage = storage, .unit = unit,
                     .kind = (SteadItemKind) word_of (writer, group, "kind", kinds),
                     .shelf_life_days = (int) stead_demo_number_if (reader, group, "shelf_life_days", 0) };

  if (!sound (writer, error))
    return FALSE;
  item.reorder_base = stead_quantity_to_base (reorder, unit);
  if (!stead_item_repo_save (writer->store, &item, error))
    return FALSE;
  set_id (writer, group, item.id);
  return TRUE;
}

/* One action for each group of a kind. */
static gboolean
write_groups (Writer      *writer,
              const char  *kind,
              Deed         deed,
              GError     **error)
{
  g_auto(GStrv) groups = stead_demo_groups (&writer->story->reader, kind);

  for (char **group = groups; *group != NULL; group++)
    if (!act (writer, stead_demo_group_name (*group), deed, *group, error))
      return FALSE;
  return TRUE;
}

/* --- the flock and what lasts --------------------------------------------------------- */

static gboolean
write_flock (Writer         *writer,
             gconstpointer   what,
             GError        **error)
{
  SteadDemoReader *reader = &writer->story->reader;
  g_autoptr(SteadFlock) flock = stead_flock_new ();
  g_autofree char *place = stead_demo_text (reader, "flock", "place");
  g_autofree char *feed = stead_demo_text (reader, "flock", "feed");

  flock->name = stead_demo_text (reader, "flock", "name");
  flock->strain = stead_demo_text_if (reader, "flock", "strain");
  flock->note = stead_demo_text_if (reader, "flock", "note");
  flock->place_id = id_of (writer, "place", place);
  flock->housed_on = writer->story->first;
  flock->hatched_on = writer->story->first - (SteadDay) (7 * stead_demo_number (reader, "flock", "age_weeks"));
  flock->birds = (gint64) stead_demo_number (reader, "flock", "hens");
  flock->birds_cost_cents = flock->birds * stead_demo_cents (reader, "flock", "hen_cost");
  flock->salvage_cents = flock->birds * stead_demo_cents (reader, "flock", "hen_salvage");
  flock->eggs_expected = stead_demo_number (reader, "flock", "eggs_expected");
  flock->care_minutes_day = stead_demo_number (reader, "flock", "care_minutes");
  flock->feed_item_id = id_of (writer, "item", feed);
  flock->bedding_days = (int) stead_demo_number (reader, "flock", "bedding_days");
  if (!sound (writer, error) || !stead_flock_repo_save (writer->store, flock, error))
    return FALSE;
  writer->flock_id = flock->id;
  return TRUE;
}

static gboolean
write_asset (Writer         *writer,
             gconstpointer   what,
             GError        **error)
{
  const char *group = what;
  SteadDemoReader *reader = &writer->story->reader;
  g_autoptr(SteadAsset) asset = stead_asset_new ();
  SteadAssetShare share = { writer->flock_id, stead_demo_number (reader, group, "share") };

  asset->name = g_strdup (stead_demo_group_name (group));
  asset->bought_on = day_at (writer, -(int) stead_demo_number (reader, group, "days_before"));
  asset->cost_cents = stead_demo_cents (reader, group, "cost");
  asset->extra_cents = (gint64) round (100 * stead_demo_number_if (reader, group, "extra", 0));
  asset->salvage_cents = (gint64) round (100 * stead_demo_number_if (reader, group, "salvage", 0));
  asset->life_years = stead_demo_number (reader, group, "years");
  g_array_append_val (asset->shares, share);
  return sound (writer, error) && stead_asset_repo_save (writer->store, asset, error);
}

/* --- products ------------------------------------------------------------------------- */

static gboolean
add_parts (Writer        *writer,
           const char    *group,
           SteadProduct  *product)
{
  g_auto(GStrv) parts = stead_demo_list (&writer->story->reader, group, "parts");

  for (char **part = parts; *part != NULL; part++)
    {
      SteadProductPart one = { id_of (writer, "item", *part), 1 };

      g_array_append_val (product->parts, one);
    }
  return TRUE;
}

/* "Table:24.00", or "Second table:24.00:90". */
static void
add_stall_cost (Writer        *writer,
                SteadProduct  *product,
                const char    *text)
{
  g_auto(GStrv) parts = g_strsplit (text, ":", 3);
  SteadStallCost *cost;

  if (g_strv_length (parts) < 2)
    return;
  cost = g_new0 (SteadStallCost, 1);
  cost->name = g_strdup (parts[0]);
  cost->cents = stead_demo_cents_of (&writer->story->reader, parts[1]);
  cost->per_units = parts[2] != NULL ? (gint64) stead_demo_number_of (&writer->story->reader, parts[2]) : 0;
  g_ptr_array_add (product->stall_costs, cost);
}

static void
add_stall_costs (Writer        *writer,
                 const char    *group,
                 SteadProduct  *product)
{
  g_auto(GStrv) costs = stead_demo_list (&writer->story->reader, group, "stall");
  g_autofree char *step = stead_demo_text_if (&writer->story->reader, group, "step");

  for (char **cost = costs; *cost != NULL; cost++)
    add_stall_cost (writer, product, *cost);
  if (step != NULL)
    add_stall_cost (writer, product, step);
}

static gboolean
write_product (Writer         *writer,
               gconstpointer   what,
               GError        **error)
{
  static const char * const packs[] = { "dozen", "half_dozen", "tray", NULL };
  const char *group = what;
  SteadDemoReader *reader = &writer->story->reader;
  g_autoptr(SteadProduct) product = stead_product_new ();

  product->name = g_strdup (stead_demo_group_name (group));
  product->pack = (SteadPack) word_of (writer, group, "pack", packs);
  product->eggs_per_unit = stead_demo_number (reader, group, "eggs");
  product->flock_id = writer->flock_id;
  product->unsold_frac = stead_demo_number (reader, group, "unsold");
  product->pack_minutes = stead_demo_number (reader, group, "minutes");
  product->planned_units = (gint64) stead_demo_number (reader, group, "planned");
  product->target_cents = stead_demo_cents (reader, group, "target");
  add_parts (writer, group, product);
  add_stall_costs (writer, group, product);
  if (!sound (writer, error) || !stead_product_repo_save (writer->store, product, error))
    return FALSE;
  set_id (writer, group, product->id);
  return TRUE;
}

/* "42:4.00:Why" */
static gboolean
write_price (Writer         *writer,
             const char     *group,
             const char     *text,
             GError        **error)
{
  g_auto(GStrv) parts = g_strsplit (text, ":", 3);

  return stead_product_repo_set_price (writer->store, id_of (writer, "product", stead_demo_group_name (group)),
                                       day_at (writer, writer->at),
                                       stead_demo_cents_of (&writer->story->reader, parts[1]), parts[2], error);
}

static gboolean
write_first_price (Writer         *writer,
                   gconstpointer   what,
                   GError        **error)
{
  const char * const *group_and_text = what;

  return write_product (writer, group_and_text[0], error) &&
         write_price (writer, group_and_text[0], group_and_text[1], error);
}

static gboolean
write_next_price (Writer         *writer,
                  gconstpointer   what,
                  GError        **error)
{
  const char * const *group_and_text = what;

  return write_price (writer, group_and_text[0], group_and_text[1], error);
}

/* A product begins with its first price. */
static gboolean
live_prices (Writer  *writer,
             GError **error)
{
  g_auto(GStrv) groups = stead_demo_groups (&writer->story->reader, "product");

  for (char **group = groups; *group != NULL; group++)
    {
      g_auto(GStrv) prices = stead_demo_list (&writer->story->reader, *group, "prices");

      for (char **price = prices; *price != NULL; price++)
        {
          const char *what[] = { *group, *price };

          if ((int) g_ascii_strtod (*price, NULL) != writer->at)
            continue;
          if (strchr (*price, ':') == NULL)
            stead_demo_fault (&writer->story->reader, *group, "prices");
          if (!sound (writer, error) ||
              !act (writer, stead_demo_group_name (*group), price == prices ? write_first_price : write_next_price,
                    what, error))
            return FALSE;
        }
    }
  return TRUE;
}

/* --- one day ---------------------------------------------------------------------------- */

/* Students take turns by the week, a helper stands in for the summer. */
static gint64
person_on (Writer *writer,
           int     at)
{
  SteadDay day = day_at (writer, at);
  int month, mday;
  guint turn = (guint) ((at + 700) / 7);

  stead_day_split (day, NULL, &month, &mday);
  if ((month == 6 && mday > 12) || month == 7 || (month == 8 && mday < 8))
    return at % 7 < 4 ? writer->helper_id : writer->advisor_id;
  for (guint i = 0; i < writer->students->len; i++)
    {
      const Student *student = writer->students->pdata[(turn + i) % writer->students->len];

      if (day >= student->from && day <= student->to)
        return student->id;
    }
  return writer->advisor_id;
}

static gboolean
write_buy (Writer         *writer,
           gconstpointer   what,
           GError        **error)
{
  const SteadDemoBuy *buy = what;
  SteadDemoReader *reader = &writer->story->reader;
  g_autofree char *group = g_strconcat ("item ", buy->item, NULL);
  g_autoptr(SteadReceipt) receipt = stead_receipt_new ();
  const SteadUnit *unit = unit_of (writer, group);
  double shelf_days = stead_demo_number_if (reader, group, "shelf_life_days", 0);
  SteadReceiptLine line = { .item_id = id_of (writer, "item", buy->item), .cost_cents = buy->cents,
                            .best_by = STEAD_DAY_NONE };

  if (!sound (writer, error))
    return FALSE;
  line.quantity_base = stead_quantity_to_base (buy->packs * stead_demo_number (reader, group, "pack"), unit);
  receipt->day = day_at (writer, buy->day);
  if (shelf_days > 0)
    line.best_by = receipt->day + (SteadDay) shelf_days;
  receipt->supplier = g_strdup (buy->from);
  receipt->is_gift = buy->is_gift;
  receipt->note = g_strdup (buy->note);
  receipt->reference = buy->is_gift ? NULL : g_strdup_printf ("%c-%d", g_ascii_toupper (buy->from[0]),
                                                              20417 + 37 * (buy->day + 60) + (int) buy->packs);
  receipt->person_id = buy->is_gift ? writer->advisor_id : person_on (writer, buy->day);
  g_array_append_val (receipt->lines, line);
  return stead_receipt_repo_save (writer->store, receipt, error);
}

static gboolean
live_buys (Writer  *writer,
           GError **error)
{
  GPtrArray *buys = writer->story->buys;

  for (; writer->next_buy < buys->len; writer->next_buy++)
    {
      const SteadDemoBuy *buy = buys->pdata[writer->next_buy];
      g_autofree char *name = NULL;

      if (buy->day > writer->at)
        return TRUE;
      if (buy->from == NULL)
        stead_demo_fault (&writer->story->reader, buy->item, "supplier");
      /* Translators: a step of undo; %s is a store or a family. */
      name = g_strdup_printf (_("Receipt from %s"), buy->from);
      if (!sound (writer, error) || !act (writer, name, write_buy, buy, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
write_use (Writer         *writer,
           gconstpointer   what,
           GError        **error)
{
  const SteadDemoUse *use = what;
  g_autofree char *group = g_strconcat ("item ", use->item, NULL);
  const SteadUnit *unit = unit_of (writer, group);
  gint64 item = id_of (writer, "item", use->item);
  gint64 person = person_on (writer, use->day);
  double base;

  if (!sound (writer, error))
    return FALSE;
  base = stead_quantity_to_base (use->quantity, unit);
  return use->is_sold
         ? stead_lot_repo_sell (writer->store, item, day_at (writer, use->day), base, _("Packed for the sale"),
                                person, error)
         : stead_lot_repo_use (writer->store, item, writer->flock_id, day_at (writer, use->day), base, person,
                               error);
}

static gboolean
live_uses (Writer  *writer,
           GError **error)
{
  GPtrArray *uses = writer->story->uses;

  for (; writer->next_use < uses->len; writer->next_use++)
    {
      const SteadDemoUse *use = uses->pdata[writer->next_use];
      g_autofree char *name = NULL;

      if (use->day > writer->at)
        return TRUE;
      /* Translators: a step of undo; %s is a thing in the store room. */
      name = g_strdup_printf (_("Use of %s"), use->item);
      if (!act (writer, name, write_use, use, error))
        return FALSE;
    }
  return TRUE;
}

/* The second collection, if there was one, is an entry of its own. */
static gboolean
write_day (Writer         *writer,
           gconstpointer   what,
           GError        **error)
{
  const SteadDemoDay *day = what;
  SteadFlockEntry entry = { .flock_id = writer->flock_id, .day = day_at (writer, writer->at),
                            .eggs = day->eggs - day->later_eggs,
                            .cracked = MIN (day->cracked, day->eggs - day->later_eggs),
                            .deaths = day->deaths, .left_out = day->left_out, .note = day->note,
                            .feed_kg = day->feed_lb > 0
                                       ? stead_quantity_to_base (day->feed_lb, stead_unit_by_id ("lb")) : NAN,
                            .person_id = person_on (writer, writer->at) };
  SteadFlockEntry later = { .flock_id = writer->flock_id, .day = entry.day, .eggs = day->later_eggs,
                            .left_out = day->left_out, .feed_kg = NAN, .person_id = entry.person_id };

  return stead_flock_repo_save_entry (writer->store, &entry, error) &&
         (day->later_eggs == 0 || stead_flock_repo_save_entry (writer->store, &later, error));
}

static gboolean
write_day_for_good (Writer         *writer,
                    gconstpointer   what,
                    GError        **error)
{
  stead_store_forget_steps (writer->store);
  return write_day (writer, what, error);
}

static gboolean
live_day (Writer  *writer,
          GError **error)
{
  const SteadDemoDay *day = &writer->story->days[writer->at];
  gboolean for_good = writer->at == writer->story->n_days - UNDO_DAYS - 1;
  g_autofree char *date = NULL;
  g_autofree char *name = NULL;

  if (day->eggs < 0)
    return TRUE;
  date = stead_day_format (day_at (writer, writer->at), STEAD_DAY_STYLE_SHORT);
  /* Translators: a step of undo: "22 eggs on Mar 3". */
  name = g_strdup_printf (ngettext ("%d egg on %s", "%d eggs on %s", (gulong) day->eggs), day->eggs, date);
  return act (writer, name, for_good ? write_day_for_good : write_day, day, error);
}

static gboolean
write_spill (Writer         *writer,
             gconstpointer   what,
             GError        **error)
{
  double base = stead_quantity_to_base (writer->story->spilled_lb, stead_unit_by_id ("lb"));
  g_autoptr(GPtrArray) lots = stead_lot_repo_list (writer->store, FALSE, error);

  for (guint i = 0; lots != NULL && i < lots->len; i++)
    {
      const SteadLot *lot = lots->pdata[i];

      if (lot->item_kind == STEAD_ITEM_FEED)
        return stead_lot_repo_adjust (writer->store, lot->id, STEAD_MOVE_LOST, day_at (writer, 0), -base,
                                      _("A bag tore open on the way; wet feed was thrown out"), writer->helper_id,
                                      error);
    }
  return lots != NULL;
}

/* --- signing ------------------------------------------------------------------------------ */

static gboolean
sign_old (Writer         *writer,
          gconstpointer   what,
          GError        **error)
{
  g_autoptr(GPtrArray) receipts = stead_receipt_repo_list (writer->store, error);

  for (guint i = receipts != NULL ? receipts->len : 0; i > 0; i--)
    {
      const SteadReceipt *receipt = receipts->pdata[i - 1];

      if (receipt->signed_by == 0 && receipt->day <= day_at (writer, writer->at) - SIGN_AGE_DAYS &&
          !stead_receipt_repo_sign (writer->store, receipt->id, writer->advisor_id, error))
        return FALSE;
    }
  return receipts != NULL;
}

/* --- the whole ---------------------------------------------------------------------------- */

static gboolean
begin_farm (Writer  *writer,
            GError **error)
{
  return act (writer, "farm", write_farm, NULL, error) &&
         write_groups (writer, "person", write_person, error) &&
         write_groups (writer, "place", write_place, error) &&
         write_groups (writer, "item", write_item, error);
}

static gboolean
begin_flock (Writer  *writer,
             GError **error)
{
  return act (writer, "flock", write_flock, NULL, error) &&
         write_groups (writer, "asset", write_asset, error) &&
         (!(writer->story->spilled_lb > 0) || act (writer, "feed", write_spill, NULL, error));
}

static gboolean
live (Writer  *writer,
      GError **error)
{
  int first_buy = writer->story->buys->len > 0 ? ((SteadDemoBuy *) writer->story->buys->pdata[0])->day : 0;

  for (writer->at = MIN (first_buy, 0); writer->at < writer->story->n_days; writer->at++)
    {
      stead_store_set_today (writer->store, day_at (writer, writer->at));
      if (!live_buys (writer, error) ||
          (writer->at == 0 && !begin_flock (writer, error)) ||
          !live_prices (writer, error) ||
          !live_uses (writer, error) ||
          (writer->at % SIGN_STEP_DAYS == 0 && writer->at > 0 &&
           !act (writer, "sign", sign_old, NULL, error)) ||
          (writer->at >= 0 && !live_day (writer, error)))
        return FALSE;
    }
  return TRUE;
}

gboolean
stead_demo_write (SteadDemoStory  *story,
                  SteadStore      *store,
                  GError         **error)
{
  Writer writer = { .story = story, .store = store };
  gboolean done;

  writer.ids = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  writer.students = g_ptr_array_new_with_free_func (g_free);
  stead_store_set_today (store, story->first - 400);
  done = begin_farm (&writer, error) && live (&writer, error);
  g_hash_table_unref (writer.ids);
  g_ptr_array_unref (writer.students);
  return done;
}
