/* stead-check-row.c - one line of a checklist: what to check, why, what was read, and what was done.
 *
 * A reading is judged before it is kept: an odd one is asked about, and one that must
 * hold for a time asks for how long.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/check/stead-check-row-private.h"

#include "app/make/stead-make-parts.h"
#include "app/stead-ui.h"
#include "app/stead-wrap-layout.h"

enum { SAVED, POTS, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SteadCheckRow, stead_check_row, GTK_TYPE_WIDGET)

gboolean
stead_check_row_is_tick (SteadCheckRow *self)
{
  return g_str_equal (self->line->line->measure, STEAD_MEASURE_DONE);
}

gboolean
stead_check_row_is_signed (SteadCheckRow *self)
{
  return self->answer->list->signed_at != STEAD_TIME_NONE;
}

const SteadCheckRead *
stead_check_row_last_read (SteadCheckRow *self)
{
  const GPtrArray *reads = self->line->reads;

  for (guint i = reads->len; i-- > 0;)
    if (((const SteadCheckRead *) reads->pdata[i])->state != STEAD_READ_CORRECTED)
      return reads->pdata[i];
  return NULL;
}

const SteadCheckRead *
stead_check_row_failed_read (SteadCheckRow *self)
{
  const GPtrArray *reads = self->line->reads;

  for (guint i = reads->len; i-- > 0;)
    if (((const SteadCheckRead *) reads->pdata[i])->state == STEAD_READ_FAILED)
      return reads->pdata[i];
  return NULL;
}

void
stead_check_row_saved (SteadCheckRow *self)
{
  self->again = FALSE;
  self->wrong_id = 0;
  stead_check_row_show (self, self->answer, self->line, self->number);
  g_signal_emit (self, signals[SAVED], 0);
}

/* --- links ------------------------------------------------------------------------------- */

static void
why_cb (SteadCheckRow *self)
{
  gtk_widget_set_visible (self->why_box, !gtk_widget_get_visible (self->why_box));
}

static void
leave_cb (SteadCheckRow *self)
{
  gtk_widget_set_visible (self->leave_box, !gtk_widget_get_visible (self->leave_box));
  if (gtk_widget_get_visible (self->leave_box))
    gtk_widget_grab_focus (GTK_WIDGET (self->leave_reason));
}

static void
more_cb (SteadCheckRow *self)
{
  self->again = TRUE;
  self->wrong_id = 0;
  stead_check_row_show (self, self->answer, self->line, self->number);
  stead_check_row_focus (self);
}

static void
correct_cb (SteadCheckRow *self)
{
  const SteadCheckRead *read = stead_check_row_last_read (self);

  self->wrong_id = self->wrong_id == 0 && read != NULL ? read->shown->id : 0;
  stead_check_row_show (self, self->answer, self->line, self->number);
  if (self->wrong_id != 0)
    stead_check_row_focus (self);
}

static void
pots_cb (SteadCheckRow *self)
{
  g_signal_emit (self, signals[POTS], 0);
}

/* --- building ------------------------------------------------------------------------------ */

static GtkLabel *
add_label (GtkWidget  *box,
           const char *style)
{
  GtkWidget *label = stead_make_label ("", style);

  gtk_box_append (GTK_BOX (box), label);
  return GTK_LABEL (label);
}

static GtkWidget *
add_button (SteadCheckRow *self,
            GtkWidget     *box,
            const char    *label,
            const char    *style,
            void         (*clicked) (SteadCheckRow *))
{
  GtkWidget *button = gtk_button_new_with_label (label);

  if (style != NULL)
    gtk_widget_add_css_class (button, style);
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  g_signal_connect_swapped (button, "clicked", G_CALLBACK (clicked), self);
  gtk_box_append (GTK_BOX (box), button);
  return button;
}

static GtkWidget *
new_row (void)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  gtk_widget_set_layout_manager (row, stead_wrap_layout_new ());
  return row;
}

static void
make_todo (SteadCheckRow *self,
           GtkWidget     *box)
{
  GtkWidget *buttons = new_row ();

  self->todo_box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  self->todo = add_label (self->todo_box, "caution");
  self->todo_source = add_label (self->todo_box, "soft");
  gtk_widget_add_css_class (GTK_WIDGET (self->todo_source), "small");
  self->action = STEAD_FIELD (stead_field_new (_("What was done"), STEAD_FIELD_TEXT));
  g_signal_connect_swapped (self->action, "activate", G_CALLBACK (stead_check_row_save_done), self);
  gtk_box_append (GTK_BOX (self->todo_box), GTK_WIDGET (self->action));
  self->done_save = add_button (self, buttons, _("Save what was done"), NULL, stead_check_row_save_done);
  self->did = add_button (self, buttons, _("I did what it says"), NULL, stead_check_row_did);
  gtk_box_append (GTK_BOX (self->todo_box), buttons);
  gtk_box_append (GTK_BOX (box), self->todo_box);
}

static void
make_links (SteadCheckRow *self,
            GtkWidget     *box)
{
  self->links = new_row ();
  self->done = add_button (self, self->links, C_("check", "Done"), NULL, stead_check_row_done);
  self->undone = add_button (self, self->links, C_("check", "Not done"), NULL, stead_check_row_undone);
  self->why = add_button (self, self->links, _("Why?"), "link", why_cb);
  self->more = add_button (self, self->links, _("Another reading"), "link", more_cb);
  self->pots = add_button (self, self->links, _("Pots and their curves"), "link", pots_cb);
  self->correct = add_button (self, self->links, _("Correct the last reading"), "link", correct_cb);
  self->leave = add_button (self, self->links, _("Leave it out…"), "link", leave_cb);
  self->take_back = add_button (self, self->links, _("Take it in again"), "link", stead_check_row_take_back);
  gtk_box_append (GTK_BOX (box), self->links);
}

static void
make_why (SteadCheckRow *self,
          GtkWidget     *box)
{
  self->why_box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);
  self->reason = add_label (self->why_box, NULL);
  self->how = add_label (self->why_box, "soft");
  self->source = add_label (self->why_box, "soft");
  gtk_widget_add_css_class (GTK_WIDGET (self->source), "small");
  gtk_widget_hide (self->why_box);
  gtk_box_append (GTK_BOX (box), self->why_box);
}

static void
make_leave (SteadCheckRow *self,
            GtkWidget     *box)
{
  GtkWidget *buttons = new_row ();

  self->leave_box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  self->leave_reason = STEAD_FIELD (stead_field_new (_("Why it need not be done"), STEAD_FIELD_TEXT));
  g_signal_connect_swapped (self->leave_reason, "activate", G_CALLBACK (stead_check_row_save_left), self);
  gtk_box_append (GTK_BOX (self->leave_box), GTK_WIDGET (self->leave_reason));
  self->leave_save = add_button (self, buttons, _("Leave it out"), NULL, stead_check_row_save_left);
  gtk_box_append (GTK_BOX (self->leave_box), buttons);
  gtk_widget_hide (self->leave_box);
  gtk_box_append (GTK_BOX (box), self->leave_box);
}

static void
stead_check_row_init (SteadCheckRow *self)
{
  GtkWidget *row = stead_ui_row_new (12);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);

  self->digits = GTK_LABEL (stead_make_label ("", "number"));
  gtk_label_set_width_chars (self->digits, 3);
  gtk_label_set_xalign (self->digits, 1);
  gtk_widget_set_valign (GTK_WIDGET (self->digits), GTK_ALIGN_START);
  gtk_widget_set_hexpand (box, TRUE);
  self->text = add_label (box, "strong");
  self->own = add_label (box, NULL);
  self->state = add_label (box, NULL);
  self->reads = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_box_append (GTK_BOX (box), self->reads);
  make_todo (self, box);
  self->entry = STEAD_CHECK_ENTRY (stead_check_entry_new ());
  g_signal_connect_swapped (self->entry, "read", G_CALLBACK (stead_check_row_read), self);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->entry));
  make_links (self, box);
  make_why (self, box);
  make_leave (self, box);
  stead_ui_row_append (row, GTK_WIDGET (self->digits));
  stead_ui_row_append (row, box);
  gtk_widget_set_parent (row, GTK_WIDGET (self));
}

static void
stead_check_row_dispose (GObject *object)
{
  SteadCheckRow *self = STEAD_CHECK_ROW (object);

  stead_ui_drop_children (GTK_WIDGET (object));
  g_clear_object (&self->desk);
  G_OBJECT_CLASS (stead_check_row_parent_class)->dispose (object);
}

static void
stead_check_row_class_init (SteadCheckRowClass *klass)
{
  GType type = G_TYPE_FROM_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = stead_check_row_dispose;
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (klass), "checkrow");
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
  signals[SAVED] = g_signal_new ("saved", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[POTS] = g_signal_new ("pots", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

GtkWidget *
stead_check_row_new (SteadDesk       *desk,
                     SteadPersonPick *person,
                     SteadPick       *instrument)
{
  SteadCheckRow *self = g_object_new (STEAD_TYPE_CHECK_ROW, NULL);

  self->desk = g_object_ref (desk);
  self->person = person;
  self->instrument = instrument;
  return GTK_WIDGET (self);
}
