/* stead-pots-view.c - the pots of one line that cool. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/check/stead-pots-view.h"

#include "answer/stead-check-answer.h"
#include "app/check/stead-pot-card.h"
#include "app/make/stead-make-parts.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "app/stead-wrap-layout.h"

struct _SteadPotsView
{
  GtkWidget         parent_instance;

  SteadDesk        *desk;
  gint64            line_id;
  SteadCheckAnswer *answer;    /* (nullable): as last shown */

  GtkWidget        *cards, *form, *back;
  GtkLabel         *title, *text;
  SteadPersonPick  *person;
  SteadField       *name, *how, *depth;
};

enum { BACK, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SteadPotsView, stead_pots_view, GTK_TYPE_WIDGET)

static void
back_cb (SteadPotsView *self)
{
  g_signal_emit (self, signals[BACK], 0);
}

/* --- a new pot ------------------------------------------------------------------------ */

typedef struct
{
  gint64      line_id;
  const char *name, *how;   /* how: (nullable) */
  double      depth_m;      /* NAN */
} NewPot;

static gboolean
pot_act (SteadStore *store,
         gpointer    data,
         GError    **error)
{
  const NewPot *pot = data;
  gint64 id = 0;

  return stead_check_repo_save_pot (store, pot->line_id, &id, pot->name, pot->how, pot->depth_m, error);
}

static void
add_cb (SteadPotsView *self)
{
  NewPot pot = { .line_id = self->line_id, .depth_m = NAN };
  g_autofree char *name = NULL, *how = NULL, *step = NULL;
  g_autoptr(GError) error = NULL;

  if (stead_field_is_empty (self->name))
    {
      stead_field_set_error (self->name, _("Give the pot a name, for example “big pot”."));
      return;
    }
  if (!stead_field_read_quantity (self->depth, NAN, &pot.depth_m))
    return;
  pot.name = name = g_strdup (stead_field_get_text (self->name));
  how = g_strdup (stead_field_get_text (self->how));
  pot.how = *how != '\0' ? how : NULL;
  /* Translators: a step that can be undone: the name of a pot. */
  step = g_strdup_printf (_("the pot “%s”"), name);
  if (!stead_desk_act (self->desk, step, pot_act, &pot, &error))
    {
      stead_field_set_error (self->name, error->message);
      return;
    }
  stead_field_set_text (self->name, "");
  stead_field_set_text (self->how, "");
  stead_field_set_text (self->depth, "");
}

/* --- showing -------------------------------------------------------------------------------- */

static const SteadCheckedLine *
line_of (const SteadCheckAnswer *answer,
         gint64                  line_id)
{
  for (guint i = 0; i < answer->lines->len; i++)
    if (((const SteadCheckedLine *) answer->lines->pdata[i])->line->id == line_id)
      return answer->lines->pdata[i];
  return NULL;
}

static void
show_cards (SteadPotsView          *self,
            const SteadCheckedLine *line)
{
  GtkWidget *card = gtk_widget_get_first_child (self->cards);

  for (guint i = 0; i < line->pots->len; i++)
    {
      if (card == NULL)
        {
          card = stead_pot_card_new (self->desk, self->person);
          gtk_box_append (GTK_BOX (self->cards), card);
        }
      stead_pot_card_show (STEAD_POT_CARD (card), self->answer, line, line->pots->pdata[i]);
      card = gtk_widget_get_next_sibling (card);
    }
  while (card != NULL)
    {
      GtkWidget *gone = card;

      card = gtk_widget_get_next_sibling (card);
      gtk_box_remove (GTK_BOX (self->cards), gone);
    }
}

gboolean
stead_pots_view_show (SteadPotsView *self,
                      SteadDesk     *desk,
                      gint64         list_id,
                      gint64         line_id)
{
  SteadCheckAnswer *answer, *old;
  const SteadCheckedLine *line;
  g_autofree char *title = NULL;

  g_return_val_if_fail (STEAD_IS_POTS_VIEW (self), FALSE);

  g_set_object (&self->desk, desk);
  answer = stead_check_answer_new (stead_desk_get_store (desk), list_id, NULL);
  line = answer != NULL ? line_of (answer, line_id) : NULL;
  if (line == NULL)
    {
      stead_check_answer_free (answer);
      return FALSE;
    }
  if (self->line_id != line_id)
    stead_make_clear (self->cards);
  self->line_id = line_id;
  old = self->answer;
  self->answer = answer;
  stead_field_set_unit (self->depth, stead_unit_by_id (answer->farm->units == STEAD_UNITS_METRIC ? "cm" : "in"));
  /* Translators: the name of a food. */
  title = g_strdup_printf (_("Cooling: %s"), line->food != NULL ? line->food : answer->list->name);
  gtk_label_set_text (self->title, title);
  gtk_label_set_text (self->text, line->text);
  stead_person_pick_fill (self->person, stead_desk_get_store (desk));
  gtk_widget_set_visible (self->form, answer->list->signed_at == STEAD_TIME_NONE);
  show_cards (self, line);
  stead_check_answer_free (old);
  return TRUE;
}

/* --- the object --------------------------------------------------------------------------------- */

static void
stead_pots_view_dispose (GObject *object)
{
  SteadPotsView *self = STEAD_POTS_VIEW (object);

  stead_ui_drop_children (GTK_WIDGET (object));
  g_clear_pointer (&self->answer, stead_check_answer_free);
  g_clear_object (&self->desk);
  G_OBJECT_CLASS (stead_pots_view_parent_class)->dispose (object);
}

static void
stead_pots_view_class_init (SteadPotsViewClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_pots_view_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
  signals[BACK] = g_signal_new ("back", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static SteadField *
add_field (SteadPotsView  *self,
           GtkWidget      *box,
           const char     *label,
           SteadFieldKind  kind)
{
  GtkWidget *field = stead_field_new (label, kind);

  gtk_widget_set_size_request (field, 180, -1);
  gtk_widget_set_hexpand (field, FALSE);
  g_signal_connect_swapped (field, "activate", G_CALLBACK (add_cb), self);
  gtk_box_append (GTK_BOX (box), field);
  return STEAD_FIELD (field);
}

static void
make_form (SteadPotsView *self,
           GtkWidget     *box)
{
  GtkWidget *fields = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *add = gtk_button_new_with_label (_("Add the pot"));

  self->form = gtk_box_new (GTK_ORIENTATION_VERTICAL, 9);
  gtk_widget_add_css_class (self->form, "card");
  gtk_box_append (GTK_BOX (self->form), stead_make_label (_("One more pot or pan"), "heading"));
  gtk_widget_set_layout_manager (fields, stead_wrap_layout_new ());
  self->name = add_field (self, fields, _("Name of the pot"), STEAD_FIELD_TEXT);
  self->how = add_field (self, fields, _("How it is cooled"), STEAD_FIELD_TEXT);
  self->depth = add_field (self, fields, _("How deep the food stands"), STEAD_FIELD_QUANTITY);
  gtk_box_append (GTK_BOX (self->form), fields);
  gtk_widget_set_halign (add, GTK_ALIGN_START);
  g_signal_connect_swapped (add, "clicked", G_CALLBACK (add_cb), self);
  gtk_box_append (GTK_BOX (self->form), add);
  gtk_box_append (GTK_BOX (box), self->form);
}

static void
stead_pots_view_init (SteadPotsView *self)
{
  GtkWidget *scroller = gtk_scrolled_window_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);

  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_widget_set_margin_end (box, 6);
  self->back = gtk_button_new_with_label (_("Back to the list"));
  gtk_widget_set_halign (self->back, GTK_ALIGN_START);
  g_signal_connect_swapped (self->back, "clicked", G_CALLBACK (back_cb), self);
  self->title = GTK_LABEL (stead_make_label ("", "title"));
  self->text = GTK_LABEL (stead_make_label ("", NULL));
  self->person = STEAD_PERSON_PICK (stead_person_pick_new ());
  gtk_widget_set_halign (GTK_WIDGET (self->person), GTK_ALIGN_START);
  self->cards = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  gtk_box_append (GTK_BOX (box), self->back);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->title));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->text));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->person));
  gtk_box_append (GTK_BOX (box), self->cards);
  make_form (self, box);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), box);
  gtk_widget_set_parent (scroller, GTK_WIDGET (self));
}
