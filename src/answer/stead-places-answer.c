/* stead-places-answer.c - the farm's places, and what is in each of them. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "answer/stead-places-answer.h"

#include "answer/stead-words-private.h"
#include "store/stead-batch-repo.h"
#include "store/stead-farm-repo.h"
#include "store/stead-lot-repo.h"
#include "store/stead-shown-repo.h"

/* All that may stand in a place. */
typedef struct
{
  GPtrArray *batches;       /* of SteadBatch, under way */
  GPtrArray *lots;          /* of SteadLot, on hand */
  GPtrArray *instruments;   /* of SteadInstrument, in use */
} Things;

static void
things_clear (Things *things)
{
  g_clear_pointer (&things->batches, g_ptr_array_unref);
  g_clear_pointer (&things->lots, g_ptr_array_unref);
  g_clear_pointer (&things->instruments, g_ptr_array_unref);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Things, things_clear)

void
stead_place_row_free (SteadPlaceRow *row)
{
  if (row == NULL)
    return;
  stead_place_facts_free (row->place);
  g_free (row->floor);
  g_free (row->there);
  g_free (row);
}

void
stead_places_answer_free (SteadPlacesAnswer *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->rows, g_ptr_array_unref);
  g_free (self->sentence);
  g_free (self);
}

const char *
stead_place_kind_label (SteadPlaceKind kind)
{
  switch (kind)
    {
    case STEAD_PLACE_COOP:
      return C_("kind of place", "House or pen");
    case STEAD_PLACE_TANK:
      return C_("kind of place", "Tank");
    case STEAD_PLACE_BAY:
      return C_("kind of place", "Greenhouse or bed");
    case STEAD_PLACE_KITCHEN:
      return C_("kind of place", "Kitchen");
    case STEAD_PLACE_STALL:
      return C_("kind of place", "Stall");
    case STEAD_PLACE_STORE_ROOM:
      return C_("kind of place", "Store room or refrigerator");
    default:
      g_return_val_if_reached (NULL);
    }
}

gboolean
stead_place_keeps_food (const SteadPlaceFacts *place)
{
  g_return_val_if_fail (place != NULL, FALSE);
  return place->kind == STEAD_PLACE_KITCHEN || place->kind == STEAD_PLACE_STORE_ROOM || place->kind == STEAD_PLACE_STALL;
}

static gboolean
things_read (Things      *things,
             SteadStore  *store,
             GError     **error)
{
  things->batches = stead_batch_repo_list (store, FALSE, error);
  things->lots = things->batches != NULL ? stead_lot_repo_list (store, FALSE, error) : NULL;
  things->instruments = things->lots != NULL ? stead_instrument_repo_list (store, FALSE, error) : NULL;
  return things->instruments != NULL;
}

static char *
there_text (const Things *things,
            gint64        place_id)
{
  g_autoptr(GPtrArray) names = g_ptr_array_new_with_free_func (g_free);
  int n_lots = 0;

  for (guint i = 0; i < things->batches->len; i++)
    if (((const SteadBatch *) things->batches->pdata[i])->place_id == place_id)
      g_ptr_array_add (names, g_strdup (((const SteadBatch *) things->batches->pdata[i])->name));
  for (guint i = 0; i < things->lots->len; i++)
    n_lots += ((const SteadLot *) things->lots->pdata[i])->place_id == place_id;
  if (n_lots > 0)
    g_ptr_array_add (names, g_strdup_printf (ngettext ("%d lot", "%d lots", (gulong) n_lots), n_lots));
  for (guint i = 0; i < things->instruments->len; i++)
    if (((const SteadInstrument *) things->instruments->pdata[i])->place_id == place_id)
      g_ptr_array_add (names, g_strdup (((const SteadInstrument *) things->instruments->pdata[i])->name));
  if (names->len == 0)
    return g_strdup ("");
  g_ptr_array_add (names, NULL);
  return stead_words_list ((const char * const *) names->pdata);
}

static char *
sentence_new (const SteadPlacesAnswer *self)
{
  int n = (int) self->rows->len;

  if (n == 0)
    return g_strdup (_("The farm has no place yet. Add where animals live, and where food is made, kept and sold."));
  if (!self->keeps_food)
    return g_strdup_printf (ngettext ("The farm has <b>%d place</b>. No food is kept there: add the kitchen, the store room "
                                      "or the refrigerator, and its air can be watched.",
                                      "The farm has <b>%d places</b>. No food is kept in any of them: add the kitchen, the "
                                      "store room or the refrigerator, and its air can be watched.", (gulong) n), n);
  return g_strdup_printf (ngettext ("The farm has <b>%d place</b>.", "The farm has <b>%d places</b>.", (gulong) n), n);
}

SteadPlacesAnswer *
stead_places_answer_new (SteadStore  *store,
                         GError     **error)
{
  g_autoptr(SteadPlacesAnswer) self = g_new0 (SteadPlacesAnswer, 1);
  g_autoptr(SteadFarm) farm = stead_farm_repo_get (store, error);
  g_autoptr(GPtrArray) places = farm != NULL ? stead_place_repo_list (store, error) : NULL;
  g_auto(Things) things = { NULL };

  if (places == NULL || !things_read (&things, store, error))
    return NULL;
  self->rows = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_place_row_free);
  for (guint i = 0; i < places->len; i++)
    {
      SteadPlaceRow *row = g_new0 (SteadPlaceRow, 1);

      row->place = g_steal_pointer (&places->pdata[i]);
      row->floor = isnan (row->place->area_m2)
                   ? g_strdup ("")
                   : stead_quantity_format (row->place->area_m2, stead_unit_default (STEAD_DIMENSION_AREA, farm->units));
      row->there = there_text (&things, row->place->id);
      self->keeps_food |= stead_place_keeps_food (row->place);
      g_ptr_array_add (self->rows, row);
    }
  self->sentence = sentence_new (self);
  return g_steal_pointer (&self);
}
