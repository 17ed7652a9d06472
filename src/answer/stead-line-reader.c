/* stead-line-reader.c - what the one-line entry knows of the farm, what it understood,
 * and how that is recorded.
 */
#include "config.h"

#include "answer/stead-fish-answer.h"
#include "answer/stead-flock-answer.h"
#include "answer/stead-line-answer.h"
#include "answer/stead-line-private.h"
#include "answer/stead-words-private.h"
#include "store/stead-lot-repo.h"

#include <glib/gi18n-lib.h>
#include <math.h>

void
stead_line_reader_free (SteadLineReader *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->farm, stead_farm_free);
  g_clear_pointer (&self->subjects, g_ptr_array_unref);
  g_clear_pointer (&self->flocks, g_ptr_array_unref);
  g_clear_pointer (&self->fish, g_ptr_array_unref);
  g_clear_pointer (&self->tanks, g_ptr_array_unref);
  g_clear_pointer (&self->people, g_ptr_array_unref);
  g_clear_pointer (&self->items, g_ptr_array_unref);
  g_free (self);
}

static void
add_subject (SteadLineReader  *self,
             SteadLineSubject  subject)
{
  g_ptr_array_add (self->subjects, g_memdup2 (&subject, sizeof subject));
}

static gboolean
add_flocks (SteadStore       *store,
            SteadLineReader  *self,
            GError          **error)
{
  for (guint i = 0; i < self->flocks->len; i++)
    {
      const SteadFlock *flock = self->flocks->pdata[i];
      SteadLineSubject subject = { .name = flock->name, .flock = flock };

      subject.alive = stead_flock_repo_alive (store, flock->id, self->read_on, error);
      if (subject.alive < 0)
        return FALSE;
      add_subject (self, subject);
    }
  return TRUE;
}

static gboolean
add_fish (SteadStore       *store,
          SteadLineReader  *self,
          GError          **error)
{
  for (guint i = 0; i < self->fish->len; i++)
    {
      const SteadFish *group = self->fish->pdata[i];
      SteadLineSubject subject = { .name = group->batch.name, .fish = group };

      if (!stead_fish_repo_stand (store, group->batch.id, MAX (self->read_on, group->batch.started_on), 0,
                                  &subject.stand, error))
        return FALSE;
      add_subject (self, subject);
    }
  return TRUE;
}

/* The only group that lives in a tank is called by the tank's name, too. */
static void
add_tanks (SteadLineReader *self)
{
  guint first = self->flocks->len;

  for (guint i = 0; i < self->tanks->len; i++)
    {
      const SteadTank *tank = self->tanks->pdata[i];
      const SteadLineSubject *only = NULL;
      int n = 0;

      for (guint k = 0; k < self->fish->len; k++)
        if (((const SteadFish *) self->fish->pdata[k])->batch.place_id == tank->place_id)
          {
            only = self->subjects->pdata[first + k];
            n++;
          }
      if (n == 1)
        {
          SteadLineSubject subject = *only;

          subject.name = tank->name;
          add_subject (self, subject);
        }
    }
}

static void
drop_gone (GPtrArray *people,
           SteadDay   today)
{
  for (guint i = people->len; i > 0; i--)
    {
      const SteadPerson *person = people->pdata[i - 1];

      if (person->left_on != STEAD_DAY_NONE && person->left_on <= today)
        g_ptr_array_remove_index (people, i - 1);
    }
}

SteadLineReader *
stead_line_reader_new (SteadStore  *store,
                       GError     **error)
{
  g_autoptr(SteadLineReader) self = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);

  self = g_new0 (SteadLineReader, 1);
  self->read_on = stead_store_get_today (store);
  self->subjects = g_ptr_array_new_with_free_func (g_free);
  if ((self->farm = stead_farm_repo_get (store, error)) == NULL
      || (self->flocks = stead_flock_repo_list (store, FALSE, error)) == NULL
      || (self->fish = stead_fish_repo_list (store, FALSE, error)) == NULL
      || (self->tanks = stead_tank_repo_list (store, error)) == NULL
      || (self->people = stead_person_repo_list (store, error)) == NULL
      || (self->items = stead_item_repo_list (store, error)) == NULL
      || !add_flocks (store, self, error)
      || !add_fish (store, self, error))
    return NULL;
  add_tanks (self);
  drop_gone (self->people, self->read_on);
  return g_steal_pointer (&self);
}

/* The batch by its own name, which comes before that of its tank. */
static const char *
name_by_id (const SteadLineReader *self,
            gint64                 id)
{
  for (guint i = 0; i < self->subjects->len; i++)
    {
      const SteadLineSubject *subject = self->subjects->pdata[i];

      if ((subject->flock != NULL ? subject->flock->id : subject->fish->batch.id) == id)
        return subject->name;
    }
  return "";
}

static const SteadItem *
item_by_id (const SteadLineReader *self,
            gint64                 id)
{
  for (guint i = 0; i < self->items->len; i++)
    if (((const SteadItem *) self->items->pdata[i])->id == id)
      return self->items->pdata[i];
  return NULL;
}

static char *
day_text (SteadDay day,
          SteadDay today)
{
  if (day == today)
    return g_strdup (_("today"));
  if (day == today - 1)
    return g_strdup (_("yesterday"));
  return stead_day_format (day, STEAD_DAY_STYLE_MEDIUM);
}

static char *
eggs_text (const SteadFlockEntry *entry)
{
  g_autofree char *eggs = stead_words_eggs (entry->eggs);

  if (entry->cracked == 0)
    return g_steal_pointer (&eggs);
  /* Translators: "22 eggs", then how many of them. */
  return g_strdup_printf (_("%s, %d of them cracked"), eggs, entry->cracked);
}

/* The parts of "22 eggs, 6.8 lb feed, by Ana", each in its own words. */
static GPtrArray *
parts_of (const SteadLineReader  *self,
          const SteadLineReading *reading)
{
  GPtrArray *parts = g_ptr_array_new_with_free_func (g_free);
  const SteadFlockEntry *entry = &reading->entry;
  const SteadItem *item = item_by_id (self, reading->use_item_id);

  if (entry->eggs != STEAD_COUNT_NONE)
    g_ptr_array_add (parts, eggs_text (entry));
  if (!isnan (entry->feed_kg))
    {
      const SteadUnit *unit = stead_unit_default (STEAD_DIMENSION_MASS, self->farm->units);
      g_autofree char *feed = stead_quantity_format (entry->feed_kg, unit);

      g_ptr_array_add (parts, g_strdup_printf (_("%s of feed"), feed));
    }
  if (item != NULL)
    {
      g_autofree char *amount = stead_quantity_format (reading->use_base, item->unit);

      /* Translators: a thing of the store room and how much of it. */
      g_ptr_array_add (parts, g_strdup_printf (_("%s used: %s"), item->name, amount));
    }
  if (reading->refused)
    g_ptr_array_add (parts, g_strdup (_("feed left")));
  if (!isnan (reading->water_c))
    {
      const SteadUnit *unit = stead_unit_default (STEAD_DIMENSION_TEMPERATURE, self->farm->units);
      g_autofree char *water = stead_quantity_format (reading->water_c, unit);

      /* Translators: a temperature. */
      g_ptr_array_add (parts, g_strdup_printf (_("water of %s"), water));
    }
  if (entry->deaths > 0)
    {
      g_autofree char *animals = reading->is_fish ? stead_words_fish (entry->deaths) : stead_words_birds (entry->deaths);

      g_ptr_array_add (parts, g_strdup_printf (_("%s found dead"), animals));
    }
  if (entry->culled > 0)
    {
      g_autofree char *animals = reading->is_fish ? stead_words_fish (entry->culled) : stead_words_birds (entry->culled);

      g_ptr_array_add (parts, g_strdup_printf (_("%s taken out"), animals));
    }
  for (guint i = 0; entry->person_id != 0 && i < self->people->len; i++)
    {
      const SteadPerson *person = self->people->pdata[i];

      if (person->id == entry->person_id)
        g_ptr_array_add (parts, g_strdup_printf (_("by %s"), person->name));
    }
  if (entry->note != NULL)
    g_ptr_array_add (parts, g_strdup_printf (_("note “%s”"), entry->note));
  return parts;
}

const char *
stead_line_example (gboolean is_fish)
{
  /* Translators: examples of a line; its words are those of the one-line entry. */
  return is_fish ? C_("one-line entry", "1.2 lb feed, 1 dead, 78 F")
                 : C_("one-line entry", "22 eggs, 1 cracked, 6.8 lb feed");
}

char *
stead_line_understood (const SteadLineReader  *self,
                       const SteadLineReading *reading,
                       SteadDay                today)
{
  g_autoptr(GPtrArray) parts = parts_of (self, reading);
  g_autofree char *day = day_text (reading->entry.day, today);
  g_autofree char *list = NULL;

  g_ptr_array_add (parts, NULL);
  list = g_strjoinv ("; ", (char **) parts->pdata);
  /* Translators: a flock, a day, and what happened: "Brown hens, today: 22 eggs; 6.8 lb of feed." */
  return g_markup_printf_escaped (_("%s, <b>%s</b>: %s."),
                                  name_by_id (self, reading->entry.flock_id), day, list);
}

/* --- recording ------------------------------------------------------------ */

/* The step's name for the undo menu. */
static char *
step_name (const SteadLineReading *reading,
           SteadStore             *store,
           GError                **error)
{
  g_autoptr(SteadFarm) farm = stead_farm_repo_get (store, error);
  g_autoptr(SteadItem) item = NULL;
  g_autofree char *amount = NULL;
  g_autofree char *day = NULL;

  if (farm == NULL)
    return NULL;
  if (stead_line_has_entry (reading) && reading->is_fish)
    {
      SteadFishEntry entry;

      stead_line_fish_entry (reading, &entry);
      return stead_fish_entry_name (&entry, farm);
    }
  if (stead_line_has_entry (reading))
    return stead_flock_answer_entry_name (&reading->entry, farm);
  item = stead_item_repo_get (store, reading->use_item_id, error);
  if (item == NULL)
    return NULL;
  amount = stead_quantity_format (reading->use_base, item->unit);
  day = stead_day_format (reading->entry.day, STEAD_DAY_STYLE_SHORT);
  /* Translators: a thing of the store room, how much, a day. */
  return g_strdup_printf (_("%s, %s, on %s"), item->name, amount, day);
}

void
stead_line_fish_entry (const SteadLineReading *reading,
                       SteadFishEntry         *out)
{
  const SteadFlockEntry *entry = &reading->entry;

  *out = (SteadFishEntry) { .fish_id = entry->flock_id, .day = entry->day, .feed_kg = entry->feed_kg,
                            .refused = reading->refused, .deaths = entry->deaths, .culled = entry->culled,
                            .water_c = reading->water_c, .note = entry->note, .person_id = entry->person_id };
}

/* A copy is saved: the store fills in its id. */
static gboolean
write_entry (const SteadLineReading  *reading,
             SteadStore              *store,
             GError                 **error)
{
  SteadFlockEntry entry = reading->entry;
  SteadFishEntry fish;

  if (!reading->is_fish)
    return stead_flock_repo_save_entry (store, &entry, error);
  stead_line_fish_entry (reading, &fish);
  return stead_fish_repo_save_entry (store, &fish, error);
}

static gboolean
write_reading (const SteadLineReading  *reading,
               SteadStore              *store,
               GError                 **error)
{
  gboolean saved = !stead_line_has_entry (reading) || write_entry (reading, store, error);

  if (saved && reading->use_item_id != 0)
    saved = stead_lot_repo_use (store, reading->use_item_id, reading->entry.flock_id, reading->entry.day,
                                reading->use_base, reading->entry.person_id, error);
  return saved;
}

gboolean
stead_line_reading_record (const SteadLineReading  *reading,
                           SteadStore              *store,
                           GError                 **error)
{
  g_autofree char *name = NULL;

  g_return_val_if_fail (reading != NULL && reading->complete, FALSE);
  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);

  name = step_name (reading, store, error);
  if (name == NULL || !stead_store_begin (store, name, error))
    return FALSE;
  if (!write_reading (reading, store, error))
    {
      stead_store_rollback (store);
      return FALSE;
    }
  return stead_store_commit (store, error);
}
