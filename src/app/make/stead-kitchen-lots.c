/* stead-kitchen-lots.c - what a kitchen batch takes out of the store room, lot by lot.
 *
 * What is still needed is proposed first-expiring-first; every lot can be chosen by hand,
 * and what was taken can be given back while the batch is not finished.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/make/stead-kitchen-lots.h"

#include "app/make/stead-make-parts.h"
#include "app/make/stead-part-dialog.h"
#include "app/make/stead-take-dialog.h"
#include "app/stead-ui.h"
#include "app/stead-wrap-layout.h"
#include "core/stead-sensible.h"

#define BUTTON_PAD 5   /* of a link over its words, px */

struct _SteadKitchenLots
{
  GtkWidget      parent_instance;

  SteadDesk     *desk;
  SteadKitchen  *kitchen;    /* as last shown; with its parts */
  GPtrArray     *moves;      /* of SteadMove: what was taken */
  GPtrArray     *takes;      /* of SteadKitchenTake: what is proposed */
  SteadPersonPick *person;   /* (nullable), not owned */
  SteadDay       day;        /* on which something is taken */

  GtkWidget     *grid, *all, *buttons;
  GtkLabel      *note, *trouble;
};

G_DEFINE_FINAL_TYPE (SteadKitchenLots, stead_kitchen_lots, GTK_TYPE_WIDGET)

static gboolean
is_open (SteadKitchenLots *self)
{
  return self->kitchen->batch.ended_on == STEAD_DAY_NONE;
}

static gint64
person_of (SteadKitchenLots *self)
{
  return self->person != NULL ? stead_person_pick_get (self->person) : 0;
}

/* --- taking and giving back ------------------------------------------------------------- */

static gboolean
take_all_act (SteadStore *store,
              gpointer    data,
              GError    **error)
{
  SteadKitchenLots *self = data;

  return stead_kitchen_repo_take_proposed (store, self->kitchen->batch.id, self->day, person_of (self), error);
}

static void
take_all_cb (SteadKitchenLots *self)
{
  g_autoptr(GError) error = NULL;
  /* Translators: a step that can be undone; the name of a kitchen batch follows. */
  g_autofree char *step = g_strdup_printf (_("the ingredients of “%s”"), self->kitchen->batch.name);

  if (!stead_desk_act (self->desk, step, take_all_act, self, &error))
    stead_make_say (self->trouble, error->message, FALSE);
}

static gboolean
give_back_act (SteadStore *store,
               gpointer    data,
               GError    **error)
{
  return stead_kitchen_repo_give_back (store, ((const SteadMove *) data)->id, error);
}

static void
give_back_cb (SteadMove *move,
              GtkWidget *button)
{
  SteadKitchenLots *self = STEAD_KITCHEN_LOTS (gtk_widget_get_ancestor (button, STEAD_TYPE_KITCHEN_LOTS));
  g_autoptr(GError) error = NULL;
  g_autofree char *amount = stead_quantity_format (-move->quantity_base, move->unit);
  /* Translators: an amount with its unit, an item */
  g_autofree char *step = g_strdup_printf (_("giving back %s %s"), amount, move->item_name);

  if (!stead_desk_act (self->desk, step, give_back_act, move, &error))
    stead_make_say (self->trouble, error->message, FALSE);
}

/* Of the item of a part, over all parts. */
static double
still_needed (SteadKitchenLots       *self,
              const SteadKitchenPart *part)
{
  double need = -part->taken_base;

  for (guint i = 0; i < self->kitchen->parts->len; i++)
    {
      const SteadKitchenPart *other = self->kitchen->parts->pdata[i];

      if (other->item_id == part->item_id)
        need += other->need_base;
    }
  return need;
}

static void
choose_cb (SteadKitchenPart *part,
           GtkWidget        *button)
{
  SteadKitchenLots *self = STEAD_KITCHEN_LOTS (gtk_widget_get_ancestor (button, STEAD_TYPE_KITCHEN_LOTS));

  stead_take_dialog_show (GTK_WIDGET (self), self->desk, self->kitchen->batch.id, part, still_needed (self, part),
                          self->day, person_of (self));
}

static void
amount_cb (SteadKitchenPart *part,
           GtkWidget        *button)
{
  SteadKitchenLots *self = STEAD_KITCHEN_LOTS (gtk_widget_get_ancestor (button, STEAD_TYPE_KITCHEN_LOTS));

  stead_part_dialog_show (GTK_WIDGET (self), self->desk, part);
}

static void
another_cb (SteadKitchenLots *self)
{
  stead_part_dialog_show_new (GTK_WIDGET (self), self->desk, self->kitchen->batch.id);
}

/* --- lines -------------------------------------------------------------------------------- */

static GtkWidget *
line_box (const char *text,
          const char *style)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *label = gtk_label_new (text);

  gtk_widget_set_layout_manager (box, stead_wrap_layout_new ());
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_set_valign (label, GTK_ALIGN_CENTER);
  if (style != NULL)
    gtk_widget_add_css_class (label, style);
  gtk_box_append (GTK_BOX (box), label);
  return box;
}

static GtkWidget *
link_button (const char *label,
      const char *name,
      GCallback   clicked,
      gpointer    data)
{
  GtkWidget *button = gtk_button_new_with_label (label);

  gtk_widget_add_css_class (button, "link");
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  stead_ui_name (button, name);
  g_signal_connect_swapped (button, "clicked", clicked, data);
  return button;
}

static void
add_taken (SteadKitchenLots *self,
           GtkWidget        *lots,
           SteadMove        *move)
{
  g_autofree char *amount = stead_quantity_format (-move->quantity_base, move->unit);
  /* Translators: an amount that was taken out of a lot, and the lot's code. */
  g_autofree char *text = g_strdup_printf (_("✓ %s out of lot %s"), amount, move->lot_code);
  g_autofree char *name = g_strdup_printf (_("Give back %s out of lot %s"), amount, move->lot_code);
  GtkWidget *box = line_box (text, NULL);

  if (is_open (self))
    gtk_box_append (GTK_BOX (box), link_button (_("Give back"), name, G_CALLBACK (give_back_cb), move));
  gtk_box_append (GTK_BOX (lots), box);
}

static void
add_take (GtkWidget              *lots,
          const SteadKitchenTake *take)
{
  g_autofree char *amount = stead_quantity_format (take->base, take->unit);
  g_autofree char *day = take->best_by != STEAD_DAY_NONE ? stead_day_format (take->best_by, STEAD_DAY_STYLE_SHORT) : NULL;
  g_autofree char *text = NULL;

  if (take->lot_id == 0)
    /* Translators: an amount that the store room lacks. */
    text = g_strdup_printf (_("⚠ %s missing in the store room"), amount);
  else if (day != NULL)
    /* Translators: an amount that is proposed, the code of a lot, the day it is best by. */
    text = g_strdup_printf (_("%s out of lot %s, best by %s"), amount, take->lot_code, day);
  else
    /* Translators: an amount that is proposed, the code of a lot. */
    text = g_strdup_printf (_("%s out of lot %s"), amount, take->lot_code);
  gtk_box_append (GTK_BOX (lots), line_box (text, take->lot_id == 0 ? "warn" : "soft"));
}

/* All lots of one item: taken, then proposed, then the way to another. */
static GtkWidget *
lots_cell (SteadKitchenLots *self,
           SteadKitchenPart *part)
{
  GtkWidget *lots = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  /* Translators: an item follows */
  g_autofree char *name = g_strdup_printf (_("Choose a lot of %s"), part->item_name);

  for (guint i = 0; i < self->moves->len; i++)
    if (g_strcmp0 (((SteadMove *) self->moves->pdata[i])->item_name, part->item_name) == 0)
      add_taken (self, lots, self->moves->pdata[i]);
  for (guint i = 0; i < self->takes->len; i++)
    if (((SteadKitchenTake *) self->takes->pdata[i])->item_id == part->item_id)
      add_take (lots, self->takes->pdata[i]);
  if (is_open (self))
    {
      GtkWidget *choose = link_button (_("Choose a lot…"), name, G_CALLBACK (choose_cb), part);
      GtkWidget *last = gtk_widget_get_last_child (lots);

      gtk_box_append (GTK_BOX (last != NULL ? last : lots), choose);
    }
  return lots;
}

/* While the batch is open, a press on an amount changes it. */
static GtkWidget *
amount_cell (SteadKitchenLots *self,
             SteadKitchenPart *part)
{
  g_autofree char *amount = stead_sensible_format (part->amount, part->unit);
  /* Translators: an ingredient follows */
  g_autofree char *name = g_strdup_printf (_("Change the amount of %s"), part->item_name);
  GtkWidget *button;

  if (!is_open (self))
    return stead_make_figure (amount, "strong");
  button = link_button (amount, name, G_CALLBACK (amount_cb), part);
  gtk_widget_add_css_class (button, "figure");
  gtk_widget_set_halign (button, GTK_ALIGN_END);
  return button;
}

static void
attach (SteadKitchenLots *self,
        int               column,
        int               row,
        GtkWidget        *child)
{
  gtk_widget_set_valign (child, GTK_ALIGN_START);
  /* In line with the words beside the buttons of the last column. */
  if (row > 0 && column < 3 && is_open (self) && !GTK_IS_BUTTON (child))
    gtk_widget_set_margin_top (child, BUTTON_PAD);
  gtk_grid_attach (GTK_GRID (self->grid), child, column, row, 1, 1);
}

static void
show_heads (SteadKitchenLots *self)
{
  GtkWidget *lots = stead_make_label (_("Out of which lot"), "heading");

  gtk_widget_set_hexpand (lots, TRUE);
  attach (self, 0, 0, stead_make_figure (_("Amount"), "heading"));
  attach (self, 1, 0, stead_make_label (_("Ingredient"), "heading"));
  attach (self, 2, 0, stead_make_figure (_("As bought"), "heading"));
  attach (self, 3, 0, lots);
}

/* An item that stands in several parts has its lots beside the first. */
static gboolean
is_first (SteadKitchenLots *self,
          guint             at)
{
  const SteadKitchenPart *part = self->kitchen->parts->pdata[at];

  for (guint i = 0; i < at; i++)
    if (((SteadKitchenPart *) self->kitchen->parts->pdata[i])->item_id == part->item_id)
      return FALSE;
  return TRUE;
}

static void
show_part (SteadKitchenLots *self,
           guint             at)
{
  SteadKitchenPart *part = self->kitchen->parts->pdata[at];
  g_autofree char *bought = stead_quantity_format (part->need_base, part->item_unit);
  g_autofree char *name = part->note != NULL ? g_strdup_printf (C_("ingredient", "%s, %s"), part->item_name, part->note)
                                             : g_strdup (part->item_name);
  int row = (int) at + 1;

  attach (self, 0, row, amount_cell (self, part));
  attach (self, 1, row, stead_make_label (name, NULL));
  attach (self, 2, row, stead_make_figure (bought, "soft"));
  if (is_first (self, at))
    attach (self, 3, row, lots_cell (self, part));
}

/* What was taken by hand of something that the recipe does not name. */
static void
show_others (SteadKitchenLots *self)
{
  int row = (int) self->kitchen->parts->len + 1;

  for (guint i = 0; i < self->moves->len; i++)
    {
      SteadMove *move = self->moves->pdata[i];
      gboolean named = FALSE;
      GtkWidget *lots;

      for (guint j = 0; j < self->kitchen->parts->len; j++)
        named |= g_strcmp0 (((SteadKitchenPart *) self->kitchen->parts->pdata[j])->item_name, move->item_name) == 0;
      if (named)
        continue;
      lots = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
      add_taken (self, lots, move);
      attach (self, 1, row, stead_make_label (move->item_name, NULL));
      attach (self, 3, row++, lots);
    }
}

/* --- showing -------------------------------------------------------------------------------- */

static gboolean
read_lots (SteadKitchenLots          *self,
           const SteadKitchenAnswer  *answer,
           GError                   **error)
{
  SteadStore *store = stead_desk_get_store (self->desk);
  SteadDay today = stead_store_get_today (store);
  gint64 batch_id = answer->kitchen->batch.id;
  g_autoptr(SteadKitchen) kitchen = stead_kitchen_repo_get (store, batch_id, error);
  g_autoptr(GPtrArray) moves = kitchen != NULL ? stead_kitchen_repo_taken (store, batch_id, error) : NULL;
  g_autoptr(GPtrArray) takes = NULL;

  if (moves == NULL)
    return FALSE;
  if (kitchen->batch.ended_on != STEAD_DAY_NONE)
    takes = g_ptr_array_new ();
  else
    takes = stead_kitchen_repo_propose (store, batch_id, kitchen->batch.started_on, error);
  if (takes == NULL)
    return FALSE;
  g_clear_pointer (&self->kitchen, stead_kitchen_free);
  g_clear_pointer (&self->moves, g_ptr_array_unref);
  g_clear_pointer (&self->takes, g_ptr_array_unref);
  self->day = MIN (today, kitchen->batch.started_on);
  self->kitchen = g_steal_pointer (&kitchen);
  self->moves = g_steal_pointer (&moves);
  self->takes = g_steal_pointer (&takes);
  return TRUE;
}

static void
show_note (SteadKitchenLots *self)
{
  g_autofree char *day = NULL, *text = NULL;
  SteadDay today = stead_store_get_today (stead_desk_get_store (self->desk));

  if (is_open (self) && self->kitchen->batch.started_on > today)
    {
      day = stead_day_format (self->kitchen->batch.started_on, STEAD_DAY_STYLE_LONG);
      /* Translators: a day follows */
      text = g_strdup_printf (_("Lots are proposed for %s. Taking one now begins the batch today."), day);
    }
  stead_make_say (self->note, text, FALSE);
}

void
stead_kitchen_lots_show (SteadKitchenLots         *self,
                         SteadDesk                *desk,
                         const SteadKitchenAnswer *answer)
{
  g_autoptr(GError) error = NULL;
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  GtkWidget *focus = root != NULL ? gtk_root_get_focus (root) : NULL;
  gboolean had_focus = focus != NULL && gtk_widget_is_ancestor (focus, GTK_WIDGET (self));

  g_return_if_fail (STEAD_IS_KITCHEN_LOTS (self));

  g_set_object (&self->desk, desk);
  stead_make_clear (self->grid);
  stead_make_say (self->trouble, NULL, FALSE);
  if (!read_lots (self, answer, &error))
    {
      stead_make_say (self->trouble, error->message, FALSE);
      return;
    }
  show_heads (self);
  for (guint i = 0; i < self->kitchen->parts->len; i++)
    show_part (self, i);
  show_others (self);
  show_note (self);
  gtk_widget_set_visible (self->buttons, is_open (self));
  gtk_widget_set_visible (self->all, self->takes->len > 0);
  if (had_focus)
    gtk_widget_child_focus (GTK_WIDGET (self), GTK_DIR_TAB_FORWARD);
}

void
stead_kitchen_lots_set_person (SteadKitchenLots *self,
                               SteadPersonPick  *person)
{
  g_return_if_fail (STEAD_IS_KITCHEN_LOTS (self));
  self->person = person;
}

/* --- the object ---------------------------------------------------------------------------- */

static void
stead_kitchen_lots_dispose (GObject *object)
{
  SteadKitchenLots *self = STEAD_KITCHEN_LOTS (object);

  stead_ui_drop_children (GTK_WIDGET (object));
  g_clear_pointer (&self->kitchen, stead_kitchen_free);
  g_clear_pointer (&self->moves, g_ptr_array_unref);
  g_clear_pointer (&self->takes, g_ptr_array_unref);
  g_clear_object (&self->desk);
  G_OBJECT_CLASS (stead_kitchen_lots_parent_class)->dispose (object);
}

static void
stead_kitchen_lots_class_init (SteadKitchenLotsClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_kitchen_lots_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
stead_kitchen_lots_init (SteadKitchenLots *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  GtkWidget *another = gtk_button_new_with_label (_("Another ingredient…"));

  self->grid = gtk_grid_new ();
  gtk_grid_set_column_spacing (GTK_GRID (self->grid), 18);
  gtk_grid_set_row_spacing (GTK_GRID (self->grid), 9);
  self->all = gtk_button_new_with_label (_("Take all as proposed"));
  gtk_widget_add_css_class (self->all, "primary");
  self->buttons = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  gtk_widget_set_layout_manager (self->buttons, stead_wrap_layout_new ());
  gtk_box_append (GTK_BOX (self->buttons), self->all);
  gtk_box_append (GTK_BOX (self->buttons), another);
  g_signal_connect_swapped (another, "clicked", G_CALLBACK (another_cb), self);
  g_signal_connect_swapped (self->all, "clicked", G_CALLBACK (take_all_cb), self);
  self->note = GTK_LABEL (stead_make_label (NULL, "soft"));
  self->trouble = GTK_LABEL (stead_make_label (NULL, "warn"));
  gtk_widget_hide (GTK_WIDGET (self->trouble));
  gtk_box_append (GTK_BOX (box), self->grid);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->note));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->trouble));
  gtk_box_append (GTK_BOX (box), self->buttons);
  gtk_widget_set_parent (box, GTK_WIDGET (self));
}

GtkWidget *
stead_kitchen_lots_new (void)
{
  return g_object_new (STEAD_TYPE_KITCHEN_LOTS, NULL);
}
