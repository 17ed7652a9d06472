/* stead-fish-moves.c - what went out of a group of fish into others, and what came: each can be taken back. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/raise/stead-fish-moves.h"

#include "answer/stead-fish-text.h"
#include "answer/stead-words.h"
#include "app/make/stead-make-parts.h"
#include "app/stead-ui.h"

struct _SteadFishMoves
{
  GtkWidget  parent_instance;

  SteadDesk *desk;
  GtkWidget *rows;
};

G_DEFINE_FINAL_TYPE (SteadFishMoves, stead_fish_moves, GTK_TYPE_WIDGET)

static gboolean
remove_act (SteadStore *store,
            gpointer    data,
            GError    **error)
{
  return stead_fish_repo_delete_move (store, *(const gint64 *) data, error);
}

static void
remove_cb (SteadFishMoves *self,
           GtkWidget      *button)
{
  gint64 id = *(const gint64 *) g_object_get_data (G_OBJECT (button), "id");
  const char *name = g_object_get_data (G_OBJECT (button), "name");
  g_autofree char *step = g_strdup_printf (_("deleting %s"), name);
  g_autoptr(GError) error = NULL;

  if (!stead_desk_act (self->desk, step, remove_act, &id, &error))
    stead_desk_say (self->desk, error->message, FALSE);
}

/* (nullable) (transfer full) */
static char *
move_text (SteadStore          *store,
           const SteadFishMove *move,
           gint64               fish_id)
{
  gboolean went = move->from_id == fish_id;
  g_autoptr(SteadFish) other = stead_fish_repo_get (store, went ? move->to_id : move->from_id, NULL);
  g_autofree char *fish = stead_words_fish (move->n);
  g_autofree char *day = stead_day_format (move->day, STEAD_DAY_STYLE_MEDIUM);

  if (other == NULL)
    return NULL;
  /* Translators: a day, "20 fish", the name of another group. */
  return went ? g_strdup_printf (_("%s: %s went to “%s”"), day, fish, other->batch.name)
         /* Translators: a day, "20 fish", the name of another group. */
         : g_strdup_printf (_("%s: %s came from “%s”"), day, fish, other->batch.name);
}

static void
add_move (SteadFishMoves      *self,
          const SteadFishMove *move,
          const char          *text)
{
  GtkWidget *actions = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  /* Translators: a button and the row of a list that it stands on: "Change… Winter market". */
  g_autofree char *name = g_strdup_printf (C_("button of a row", "%s %s"), _("Take the move back"), text);
  GtkWidget *link = stead_make_link (_("Take the move back"), name, G_CALLBACK (remove_cb), self);

  g_object_set_data_full (G_OBJECT (link), "id", g_memdup2 (&move->id, sizeof move->id), g_free);
  g_object_set_data_full (G_OBJECT (link), "name", stead_fish_move_name (move), g_free);
  gtk_widget_add_css_class (actions, "outdent");
  gtk_box_append (GTK_BOX (actions), link);
  gtk_box_append (GTK_BOX (self->rows), stead_make_label (text, NULL));
  if (move->note != NULL)
    gtk_box_append (GTK_BOX (self->rows), stead_make_label (move->note, "soft"));
  gtk_box_append (GTK_BOX (self->rows), actions);
}

void
stead_fish_moves_show (SteadFishMoves *self,
                       SteadDesk      *desk,
                       gint64          fish_id)
{
  SteadStore *store = stead_desk_get_store (desk);
  g_autoptr(GPtrArray) moves = stead_fish_repo_moves (store, fish_id, NULL);

  g_return_if_fail (STEAD_IS_FISH_MOVES (self));

  g_set_object (&self->desk, desk);
  stead_make_clear (self->rows);
  for (guint i = moves != NULL ? moves->len : 0; i-- > 0; )
    {
      g_autofree char *text = move_text (store, moves->pdata[i], fish_id);

      if (text != NULL)
        add_move (self, moves->pdata[i], text);
    }
  gtk_widget_set_visible (GTK_WIDGET (self), gtk_widget_get_first_child (self->rows) != NULL);
}

/* --- the object ---------------------------------------------------------------------------------- */

static void
stead_fish_moves_dispose (GObject *object)
{
  SteadFishMoves *self = STEAD_FISH_MOVES (object);

  stead_ui_drop_children (GTK_WIDGET (object));
  g_clear_object (&self->desk);
  G_OBJECT_CLASS (stead_fish_moves_parent_class)->dispose (object);
}

static void
stead_fish_moves_class_init (SteadFishMovesClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_fish_moves_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
stead_fish_moves_init (SteadFishMoves *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  self->rows = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_box_append (GTK_BOX (box), stead_make_label (_("Fish that moved"), "heading"));
  gtk_box_append (GTK_BOX (box), self->rows);
  gtk_widget_set_parent (box, GTK_WIDGET (self));
}
