/* stead-draft.c - what is typed into a form of a page and is not saved yet. */
#include "config.h"

#include "app/stead-draft.h"

#define KEY "stead-draft"

typedef struct
{
  char  *name;
  GStrv  typed;
} Kept;

typedef struct
{
  GPtrArray  *holders;   /* (element-type GtkWidget): texts and check boxes of the form, which owns them */
  gint64      id;
  char       *name;
  GStrv       empty;     /* what the holders hold when nothing is typed */
  GHashTable *kept;      /* id → Kept: of things that the form does not show now */
} Draft;

static void
kept_free (gpointer data)
{
  Kept *kept = data;

  g_free (kept->name);
  g_strfreev (kept->typed);
  g_free (kept);
}

static void
draft_free (gpointer data)
{
  Draft *draft = data;

  g_ptr_array_unref (draft->holders);
  g_free (draft->name);
  g_strfreev (draft->empty);
  g_hash_table_unref (draft->kept);
  g_free (draft);
}

static Draft *
draft_of (GtkWidget *form)
{
  return g_object_get_data (G_OBJECT (form), KEY);
}

/* --- what the holders hold ------------------------------------------------------------- */

static void
add_holders (GtkWidget *widget,
             GPtrArray *holders)
{
  if (GTK_IS_TEXT (widget) || GTK_IS_CHECK_BUTTON (widget))
    {
      g_ptr_array_add (holders, widget);
      return;
    }
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL; child = gtk_widget_get_next_sibling (child))
    add_holders (child, holders);
}

static GStrv
read_holders (const Draft *draft)
{
  GStrv typed = g_new0 (char *, draft->holders->len + 1);

  for (guint i = 0; i < draft->holders->len; i++)
    {
      GtkWidget *holder = draft->holders->pdata[i];

      typed[i] = g_strdup (GTK_IS_TEXT (holder) ? gtk_editable_get_text (GTK_EDITABLE (holder))
                           : gtk_check_button_get_active (GTK_CHECK_BUTTON (holder)) ? "on" : "");
    }
  return typed;
}

static void
write_holders (const Draft        *draft,
               const char * const *typed)
{
  for (guint i = 0; i < draft->holders->len; i++)
    {
      GtkWidget *holder = draft->holders->pdata[i];

      if (GTK_IS_TEXT (holder))
        gtk_editable_set_text (GTK_EDITABLE (holder), typed[i]);
      else
        gtk_check_button_set_active (GTK_CHECK_BUTTON (holder), *typed[i] != '\0');
    }
}

/* (transfer full) (nullable): %NULL if nothing is typed */
static GStrv
read_typed (const Draft *draft)
{
  g_auto(GStrv) typed = read_holders (draft);

  return g_strv_equal ((const char * const *) typed, (const char * const *) draft->empty)
         ? NULL : g_steal_pointer (&typed);
}

/* --- public ------------------------------------------------------------------------------ */

void
stead_draft_watch (GtkWidget         *form,
                   GtkWidget * const *parts,
                   gsize              n)
{
  Draft *draft;

  g_return_if_fail (GTK_IS_WIDGET (form) && draft_of (form) == NULL);

  draft = g_new0 (Draft, 1);
  draft->holders = g_ptr_array_new ();
  draft->kept = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, kept_free);
  for (gsize i = 0; i < n; i++)
    add_holders (parts[i], draft->holders);
  draft->empty = read_holders (draft);
  draft->name = g_strdup ("");
  g_object_set_data_full (G_OBJECT (form), KEY, draft, draft_free);
}

void
stead_draft_name (GtkWidget  *form,
                  const char *name)
{
  Draft *draft;
  char *copy;

  g_return_if_fail (GTK_IS_WIDGET (form) && name != NULL);
  draft = draft_of (form);
  g_return_if_fail (draft != NULL);

  copy = g_strdup (name);
  g_free (draft->name);
  draft->name = copy;
}

void
stead_draft_turn (GtkWidget  *form,
                  gint64      id,
                  const char *name)
{
  Draft *draft;
  GStrv typed;

  g_return_if_fail (GTK_IS_WIDGET (form) && name != NULL);
  draft = draft_of (form);
  g_return_if_fail (draft != NULL);

  typed = read_typed (draft);
  if (typed != NULL)
    {
      Kept *kept = g_new0 (Kept, 1);

      kept->name = g_strdup (draft->name);
      kept->typed = typed;
      g_hash_table_insert (draft->kept, g_memdup2 (&draft->id, sizeof draft->id), kept);
    }
  draft->id = id;
  stead_draft_name (form, name);
}

void
stead_draft_begin (GtkWidget *form)
{
  Draft *draft;
  const Kept *kept;

  g_return_if_fail (GTK_IS_WIDGET (form));
  draft = draft_of (form);
  g_return_if_fail (draft != NULL);

  g_strfreev (draft->empty);
  draft->empty = read_holders (draft);
  kept = g_hash_table_lookup (draft->kept, &draft->id);
  if (kept != NULL)
    write_holders (draft, (const char * const *) kept->typed);
  g_hash_table_remove (draft->kept, &draft->id);
}

/* (transfer full) (nullable) */
static char *
name_typed (const Draft *draft)
{
  g_auto(GStrv) typed = read_typed (draft);
  GHashTableIter kept;
  gpointer other;

  if (typed != NULL)
    return g_strdup (draft->name);
  g_hash_table_iter_init (&kept, draft->kept);
  return g_hash_table_iter_next (&kept, NULL, &other) ? g_strdup (((const Kept *) other)->name) : NULL;
}

GtkWidget *
stead_draft_find (GtkWidget  *root,
                  char      **out_name)
{
  const Draft *draft;
  char *name;

  g_return_val_if_fail (GTK_IS_WIDGET (root) && out_name != NULL, NULL);

  draft = draft_of (root);
  name = draft != NULL ? name_typed (draft) : NULL;
  if (name != NULL)
    {
      *out_name = name;
      return root;
    }
  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *form = stead_draft_find (child, out_name);

      if (form != NULL)
        return form;
    }
  return NULL;
}
