/* stead-desk.c - the open farm as the window's parts see it.
 *
 * Invariant: "changed" is emitted once for each step, after the farm's settings
 * were dropped, so that whoever reads them in a handler reads them anew.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/stead-desk.h"
#include "app/stead-first-look.h"

struct _SteadDesk
{
  GObject         parent_instance;

  SteadStore     *store;       /* (nullable) */
  SteadFarm      *farm;        /* (nullable): read when asked for, dropped when facts change */
  SteadDueAnswer *due;         /* (nullable): likewise */
  SteadDay        due_day;     /* the day that @due is of */
  gint64          product_id;  /* 0: the first one */
  SteadPeriod     period;
};

enum
{
  SIGNAL_CHANGED,
  SIGNAL_SAID,
  SIGNAL_JUMP,
  SIGNAL_SELECTED,
  SIGNAL_LEFT,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SteadDesk, stead_desk, G_TYPE_OBJECT)

static void
drop_facts (SteadDesk *self)
{
  g_clear_pointer (&self->farm, stead_farm_free);
  g_clear_pointer (&self->due, stead_due_answer_free);
}

static void
store_changed_cb (SteadDesk *self)
{
  drop_facts (self);
  g_signal_emit (self, signals[SIGNAL_CHANGED], 0);
}

static void
drop_store (SteadDesk *self)
{
  if (self->store != NULL)
    g_signal_handlers_disconnect_by_func (self->store, store_changed_cb, self);
  g_clear_object (&self->store);
  drop_facts (self);
}

static void
stead_desk_dispose (GObject *object)
{
  drop_store (STEAD_DESK (object));
  G_OBJECT_CLASS (stead_desk_parent_class)->dispose (object);
}

static void
stead_desk_class_init (SteadDeskClass *klass)
{
  GType type = G_TYPE_FROM_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = stead_desk_dispose;
  signals[SIGNAL_CHANGED] = g_signal_new ("changed", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                          G_TYPE_NONE, 0);
  signals[SIGNAL_SAID] = g_signal_new ("said", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                       G_TYPE_NONE, 2, G_TYPE_STRING, G_TYPE_BOOLEAN);
  signals[SIGNAL_JUMP] = g_signal_new ("jump", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                       G_TYPE_NONE, 2, G_TYPE_INT, G_TYPE_INT64);
  signals[SIGNAL_SELECTED] = g_signal_new ("selected", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                           G_TYPE_NONE, 0);
  signals[SIGNAL_LEFT] = g_signal_new ("left", type, G_SIGNAL_RUN_LAST, 0, g_signal_accumulator_true_handled, NULL, NULL,
                                       G_TYPE_BOOLEAN, 1, G_TYPE_OBJECT);
}

static void
stead_desk_init (SteadDesk *self)
{
  self->period = STEAD_PERIOD_12_WEEKS;
}

SteadDesk *
stead_desk_new (void)
{
  return g_object_new (STEAD_TYPE_DESK, NULL);
}

/**
 * stead_desk_get_store:
 *
 * Returns: (transfer none) (nullable): the open farm
 */
SteadStore *
stead_desk_get_store (SteadDesk *self)
{
  g_return_val_if_fail (STEAD_IS_DESK (self), NULL);
  return self->store;
}

/**
 * stead_desk_set_store:
 * @store: (nullable) (transfer none): the farm to work on; the former one is closed
 *
 * Forgets the chosen product, then emits "changed".
 */
void
stead_desk_set_store (SteadDesk  *self,
                      SteadStore *store)
{
  g_return_if_fail (STEAD_IS_DESK (self));
  g_return_if_fail (store == NULL || STEAD_IS_STORE (store));

  if (store == self->store)
    return;
  drop_store (self);
  if (store != NULL)
    {
      self->store = g_object_ref (store);
      g_signal_connect_object (store, "changed", G_CALLBACK (store_changed_cb), self, G_CONNECT_SWAPPED);
    }
  self->product_id = 0;
  g_signal_emit (self, signals[SIGNAL_CHANGED], 0);
}

/**
 * stead_desk_get_farm:
 *
 * Returns: (transfer none) (nullable): settings of the open farm; %NULL if none
 *   is open or they cannot be read
 */
const SteadFarm *
stead_desk_get_farm (SteadDesk *self)
{
  g_return_val_if_fail (STEAD_IS_DESK (self), NULL);

  if (self->farm == NULL && self->store != NULL)
    self->farm = stead_farm_repo_get (self->store, NULL);
  return self->farm;
}

/**
 * stead_desk_get_due:
 *
 * Returns: (transfer none) (nullable): what is due today; valid until facts change
 */
const SteadDueAnswer *
stead_desk_get_due (SteadDesk  *self,
                    GError    **error)
{
  SteadDay today;

  g_return_val_if_fail (STEAD_IS_DESK (self), NULL);
  g_return_val_if_fail (self->store != NULL, NULL);

  today = stead_store_get_today (self->store);
  if (self->due != NULL && self->due_day == today)
    return self->due;
  g_clear_pointer (&self->due, stead_due_answer_free);
  self->due = stead_first_look_take_due (self->store);
  if (self->due == NULL)
    self->due = stead_due_answer_new (self->store, error);
  self->due_day = today;
  return self->due;
}

gint64
stead_desk_get_product (SteadDesk *self)
{
  g_return_val_if_fail (STEAD_IS_DESK (self), 0);
  return self->product_id;
}

void
stead_desk_set_product (SteadDesk *self,
                        gint64     product_id)
{
  g_return_if_fail (STEAD_IS_DESK (self));

  if (product_id == self->product_id)
    return;
  self->product_id = product_id;
  g_signal_emit (self, signals[SIGNAL_SELECTED], 0);
}

SteadPeriod
stead_desk_get_period (SteadDesk *self)
{
  g_return_val_if_fail (STEAD_IS_DESK (self), STEAD_PERIOD_12_WEEKS);
  return self->period;
}

void
stead_desk_set_period (SteadDesk   *self,
                       SteadPeriod  period)
{
  g_return_if_fail (STEAD_IS_DESK (self));

  if (period == self->period)
    return;
  self->period = period;
  g_signal_emit (self, signals[SIGNAL_SELECTED], 0);
}

/* What is shown after a step; something that went wrong beside it is told too. */
static void
say_saved (SteadDesk  *self,
           const char *name)
{
  g_autofree char *notice = stead_store_take_notice (self->store);
  /* Translators: %s is what was done, as in the menu: "22 eggs on March 3". */
  g_autofree char *saved = g_strdup_printf (_("Saved: %s."), name);
  g_autofree char *both = notice != NULL ? g_strconcat (saved, " ", notice, NULL) : NULL;

  stead_desk_say (self, both != NULL ? both : saved, TRUE);
}

gboolean
stead_desk_act (SteadDesk     *self,
                const char    *name,
                SteadDeskAct   act,
                gpointer       data,
                GError       **error)
{
  gint64 before;

  g_return_val_if_fail (STEAD_IS_DESK (self), FALSE);
  g_return_val_if_fail (STEAD_IS_STORE (self->store), FALSE);
  g_return_val_if_fail (name != NULL && act != NULL, FALSE);

  before = stead_store_get_change_no (self->store);
  if (!stead_store_begin (self->store, name, error))
    return FALSE;
  if (!act (self->store, data, error))
    {
      stead_store_rollback (self->store);
      return FALSE;
    }
  if (!stead_store_commit (self->store, error))
    return FALSE;
  if (stead_store_get_change_no (self->store) != before)
    say_saved (self, name);
  return TRUE;
}

/* Takes a step, one way or the other, and tells it. */
static void
step (SteadDesk  *self,
      gboolean  (*take) (SteadStore *, GError **),
      const char *said)
{
  g_autoptr(GError) error = NULL;

  stead_desk_say (self, take (self->store, &error) ? said : error->message, FALSE);
}

void
stead_desk_undo (SteadDesk *self)
{
  g_autofree char *name = NULL;
  g_autofree char *said = NULL;

  g_return_if_fail (STEAD_IS_DESK (self));

  name = self->store != NULL ? stead_store_get_undo_name (self->store) : NULL;
  if (name == NULL)
    return;
  /* Translators: %s is what was done, as in the menu: "22 eggs on March 3". */
  said = g_strdup_printf (_("Undone: %s."), name);
  step (self, stead_store_undo, said);
}

void
stead_desk_redo (SteadDesk *self)
{
  g_autofree char *name = NULL;
  g_autofree char *said = NULL;

  g_return_if_fail (STEAD_IS_DESK (self));

  name = self->store != NULL ? stead_store_get_redo_name (self->store) : NULL;
  if (name == NULL)
    return;
  /* Translators: %s is what was done, as in the menu: "22 eggs on March 3". */
  said = g_strdup_printf (_("Done again: %s."), name);
  step (self, stead_store_redo, said);
}

void
stead_desk_say (SteadDesk  *self,
                const char *text,
                gboolean    with_undo)
{
  g_return_if_fail (STEAD_IS_DESK (self));
  g_return_if_fail (text != NULL);
  g_signal_emit (self, signals[SIGNAL_SAID], 0, text, with_undo);
}

void
stead_desk_jump (SteadDesk   *self,
                 SteadTarget  target,
                 gint64       id)
{
  g_return_if_fail (STEAD_IS_DESK (self));
  g_signal_emit (self, signals[SIGNAL_JUMP], 0, (int) target, id);
}

gboolean
stead_desk_leave (SteadDesk *self,
                  GObject   *dialog)
{
  gboolean taken = FALSE;

  g_return_val_if_fail (STEAD_IS_DESK (self), FALSE);
  g_return_val_if_fail (G_IS_OBJECT (dialog), FALSE);
  g_signal_emit (self, signals[SIGNAL_LEFT], 0, dialog, &taken);
  return taken;
}
