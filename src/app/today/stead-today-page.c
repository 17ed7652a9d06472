/* stead-today-page.c - Today: what is due, what is wrong, and the one-line entry.
 *
 * On the left what is to be done, each line with the way to the place where it is
 * done; on the right what was entered last, so that a slip is seen at once.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "answer/stead-due-answer.h"
#include "answer/stead-flock-answer.h"
#include "app/stead-ui.h"
#include "app/stead-why-box.h"
#include "app/today/stead-line-entry.h"
#include "app/today/stead-today-page.h"
#include "store/stead-product-repo.h"
#include "store/stead-receipt-repo.h"
#include "store/stead-routine-repo.h"

#define N_LATEST 8

struct _SteadTodayPage
{
  SteadPage       parent_instance;

  GtkWidget      *day;
  GtkWidget      *sentence;
  SteadLineEntry *line;
  GtkWidget      *dues;
  GtkWidget      *latest;
  GtkWidget      *latest_card;
  SteadWhyBox    *whys;
};

G_DEFINE_FINAL_TYPE (SteadTodayPage, stead_today_page, STEAD_TYPE_PAGE)

static void
empty_box (GtkWidget *box)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (box)) != NULL)
    gtk_box_remove (GTK_BOX (box), child);
}

static GtkWidget *
wrapped (const char *text,
         const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  stead_ui_wrap (GTK_LABEL (label));
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);
  return label;
}

/* --- what is due ------------------------------------------------------------------------ */

static const char *
kind_icon (SteadDueKind kind)
{
  switch (kind)
    {
    case STEAD_DUE_WARNING: return "stead-warning-symbolic";
    case STEAD_DUE_DONE:    return "stead-done-symbolic";
    case STEAD_DUE_TASK:
    default:                return "stead-todo-symbolic";
    }
}

static const char *
kind_name (SteadDueKind kind)
{
  switch (kind)
    {
    case STEAD_DUE_WARNING: return C_("due", "Look at this");
    case STEAD_DUE_DONE:    return C_("due", "Done");
    case STEAD_DUE_TASK:
    default:                return C_("due", "To do");
    }
}

/* What the button beside a line does, in a word. */
static const char *
target_verb (SteadTarget target)
{
  switch (target)
    {
    case STEAD_TARGET_FLOCK:       return C_("go to", "Open the flock");
    case STEAD_TARGET_BATCH:       return C_("go to", "Open the batch");
    case STEAD_TARGET_WATER:       return C_("go to", "Open the water");
    case STEAD_TARGET_ITEM:        return C_("go to", "Open the item");
    case STEAD_TARGET_LOT:         return C_("go to", "Open the lot");
    case STEAD_TARGET_RECEIPT:     return C_("go to", "Open the receipt");
    case STEAD_TARGET_ASSET:       return C_("go to", "Open it");
    case STEAD_TARGET_PRODUCT:     return C_("go to", "Set the price");
    case STEAD_TARGET_NEW_RECEIPT: return C_("go to", "Enter a receipt");
    case STEAD_TARGET_SALE:        return C_("go to", "Open the sale");
    case STEAD_TARGET_CHECKLIST:
    case STEAD_TARGET_HOLD:        return C_("go to", "Open the list");
    case STEAD_TARGET_COOLER:      return C_("go to", "Open the cooler");
    case STEAD_TARGET_NONE:
    default:                       return NULL;
    }
}

typedef struct
{
  SteadDesk   *desk;    /* not owned: the page that holds the button holds it */
  SteadTarget  target;
  gint64       id;
} Way;

static void
go_cb (GtkButton *button,
       Way       *way)
{
  stead_desk_jump (way->desk, way->target, way->id);
}

static GtkWidget *
make_way (SteadTodayPage *self,
          const SteadDue *due)
{
  GtkWidget *button = gtk_button_new_with_label (target_verb (due->target));
  g_autofree char *name = g_strdup_printf (C_("due", "%1$s: %2$s"), target_verb (due->target), due->text);
  Way *way = g_new0 (Way, 1);

  *way = (Way) { stead_page_get_desk (STEAD_PAGE (self)), due->target, due->id };
  g_signal_connect_data (button, "clicked", G_CALLBACK (go_cb), way, (GClosureNotify) (void (*) (void)) g_free, 0);
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  stead_ui_name (button, name);
  return button;
}

/* A task of a routine that is marked done where it stands. */
typedef struct
{
  SteadDesk *desk;    /* not owned: the page that holds the button holds it */
  gint64     id;
  char      *text;
} Task;

static void
task_free (Task *task)
{
  g_free (task->text);
  g_free (task);
}

static gboolean
done_act (SteadStore *store,
          gpointer    data,
          GError    **error)
{
  return stead_routine_repo_done (store, ((const Task *) data)->id, stead_store_get_today (store), 0, NULL, error);
}

static void
done_cb (GtkButton *button,
         Task      *task)
{
  g_autoptr(GError) error = NULL;

  if (!stead_desk_act (task->desk, task->text, done_act, task, &error))
    stead_desk_say (task->desk, error->message, FALSE);
}

static GtkWidget *
make_done (SteadTodayPage *self,
           const SteadDue *due)
{
  GtkWidget *button = gtk_button_new_with_label (C_("due", "Mark done"));
  g_autofree char *name = g_strdup_printf (C_("due", "%1$s: %2$s"), C_("due", "Mark done"), due->text);
  Task *task = g_new0 (Task, 1);

  *task = (Task) { stead_page_get_desk (STEAD_PAGE (self)), due->routine_id, g_strdup (due->text) };
  g_signal_connect_data (button, "clicked", G_CALLBACK (done_cb), task, (GClosureNotify) (void (*) (void)) task_free, 0);
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  stead_ui_name (button, name);
  return button;
}

/* The mark of @kind and what it stands for; what can be done about it is added at the end. */
static GtkWidget *
make_row (SteadDueKind  kind,
          const char   *text,
          const char   *detail)
{
  GtkWidget *row = stead_ui_row_new (12);
  GtkWidget *words = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  GtkWidget *icon = gtk_image_new_from_icon_name (kind_icon (kind));
  GtkWidget *line = wrapped (text, kind == STEAD_DUE_DONE ? "done" : "strong");

  stead_ui_name (icon, kind_name (kind));
  gtk_widget_set_tooltip_text (icon, kind_name (kind));
  gtk_widget_set_valign (icon, detail != NULL ? GTK_ALIGN_START : GTK_ALIGN_CENTER);
  gtk_widget_add_css_class (icon, kind == STEAD_DUE_WARNING ? "warn" : "soft");
  gtk_widget_add_css_class (row, "due");
  gtk_box_append (GTK_BOX (words), line);
  if (detail != NULL)
    gtk_box_append (GTK_BOX (words), wrapped (detail, "soft"));
  else
    gtk_widget_set_vexpand (line, TRUE);   /* in the middle, beside a button */
  gtk_widget_set_hexpand (words, TRUE);
  stead_ui_row_append (row, icon);
  stead_ui_row_append (row, words);
  return row;
}

static GtkWidget *
make_due (SteadTodayPage *self,
          const SteadDue *due)
{
  GtkWidget *row = make_row (due->kind, due->text, due->detail);

  if (due->routine_id != 0 && due->kind != STEAD_DUE_DONE)
    stead_ui_row_append (row, make_done (self, due));
  if (target_verb (due->target) != NULL && due->kind != STEAD_DUE_DONE)
    stead_ui_row_append (row, make_way (self, due));
  return row;
}

static void
add_row (SteadTodayPage *self,
         GtkWidget      *row)
{
  if (gtk_widget_get_first_child (self->dues) != NULL)
    gtk_box_append (GTK_BOX (self->dues), gtk_separator_new (GTK_ORIENTATION_HORIZONTAL));
  gtk_box_append (GTK_BOX (self->dues), row);
}

static void
show_dues (SteadTodayPage       *self,
           const SteadDueAnswer *answer)
{
  g_autoptr(GPtrArray) whys = stead_due_answer_whys (answer);

  gtk_label_set_markup (GTK_LABEL (self->sentence), answer->sentence);
  stead_why_box_set (self->whys, whys);
  for (guint i = 0; i < answer->dues->len; i++)
    add_row (self, make_due (self, answer->dues->pdata[i]));
}

/* --- the first steps of a farm ----------------------------------------------------------- */

typedef GPtrArray *(*ListFacts) (SteadStore *store, GError **error);

static GPtrArray *
list_batches (SteadStore  *store,
              GError     **error)
{
  return stead_batch_repo_list (store, TRUE, error);
}

static GPtrArray *
list_products (SteadStore  *store,
               GError     **error)
{
  return stead_product_repo_list (store, TRUE, error);
}

/* What a price follows from; a step is there until something of its kind is. */
static const struct
{
  ListFacts   list;
  const char *text;
  const char *detail;
  const char *button;
  const char *action;
  const char *target;   /* (nullable) */
} first_steps[] = {
  { list_batches, N_("Set up what the farm raises."),
    N_("A flock, a tank of fish or a crop: how many, how old, what they cost."),
    N_("Go to Raise"), "win.go", "raise" },
  { stead_receipt_repo_list, N_("Enter what was bought."), N_("Feed, seed, jars and cartons make most of what a thing costs."),
    N_("New receipt…"), "win.new-receipt" },
  { list_products, N_("Say what is sold."), N_("A dozen, a pound or a jar, and what it comes from."),
    N_("New product…"), "win.new-product" },
};

static GtkWidget *
make_first_step (gsize i)
{
  GtkWidget *row = make_row (STEAD_DUE_TASK, _(first_steps[i].text), _(first_steps[i].detail));
  GtkWidget *button = gtk_button_new_with_label (_(first_steps[i].button));

  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), first_steps[i].action);
  if (first_steps[i].target != NULL)
    gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "s", first_steps[i].target);
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  stead_ui_row_append (row, button);
  return row;
}

static void
show_first_steps (SteadTodayPage *self)
{
  for (gsize i = 0; i < G_N_ELEMENTS (first_steps); i++)
    {
      g_autoptr(GPtrArray) facts = first_steps[i].list (stead_page_get_store (STEAD_PAGE (self)), NULL);

      if (facts != NULL && facts->len == 0)
        add_row (self, make_first_step (i));
    }
  if (gtk_widget_get_first_child (self->dues) == NULL)
    add_row (self, wrapped (_("Nothing waits. What the flocks, the store room and the next sale ask for "
                              "will stand here."), "soft"));
}

/* --- what was entered last ----------------------------------------------------------------- */

typedef struct
{
  SteadFlockEntry *entry;
  char            *flock;
} Latest;

static void
latest_free (Latest *latest)
{
  stead_flock_entry_free (latest->entry);
  g_free (latest->flock);
  g_free (latest);
}

static int
compare_latest (gconstpointer a,
                gconstpointer b)
{
  const Latest *x = *(Latest * const *) a, *y = *(Latest * const *) b;

  if (x->entry->day != y->entry->day)
    return x->entry->day < y->entry->day ? 1 : -1;
  return x->entry->id < y->entry->id ? 1 : x->entry->id > y->entry->id ? -1 : 0;
}

/* The last few entries of every flock under way, newest first. */
static GPtrArray *
find_latest (SteadStore *store)
{
  GPtrArray *all = g_ptr_array_new_with_free_func ((GDestroyNotify) latest_free);
  g_autoptr(GPtrArray) flocks = stead_flock_repo_list (store, FALSE, NULL);

  for (guint i = 0; flocks != NULL && i < flocks->len; i++)
    {
      SteadFlock *flock = flocks->pdata[i];
      g_autoptr(GPtrArray) entries = stead_flock_repo_page_entries (store, flock->id, 0, N_LATEST, NULL);

      for (guint k = 0; entries != NULL && k < entries->len; k++)
        {
          Latest *latest = g_new0 (Latest, 1);

          latest->entry = entries->pdata[k];
          latest->flock = g_strdup (flock->name);
          g_ptr_array_add (all, latest);
        }
      if (entries != NULL)
        g_ptr_array_set_free_func (entries, NULL);
    }
  g_ptr_array_sort (all, compare_latest);
  if (all->len > N_LATEST)
    g_ptr_array_set_size (all, N_LATEST);
  return all;
}

static void
show_latest (SteadTodayPage *self)
{
  const SteadFarm *farm = stead_desk_get_farm (stead_page_get_desk (STEAD_PAGE (self)));
  g_autoptr(GPtrArray) latest = find_latest (stead_page_get_store (STEAD_PAGE (self)));

  empty_box (self->latest);
  for (guint i = 0; farm != NULL && i < latest->len; i++)
    {
      Latest *one = latest->pdata[i];
      GtkWidget *row = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
      g_autofree char *what = stead_flock_answer_entry_name (one->entry, farm);

      gtk_box_append (GTK_BOX (row), wrapped (what, NULL));
      gtk_box_append (GTK_BOX (row), wrapped (one->flock, "soft"));
      gtk_box_append (GTK_BOX (self->latest), row);
    }
  gtk_widget_set_visible (self->latest_card, latest->len > 0);
}

/* --- the place --------------------------------------------------------------------------------- */

static void
show_day (SteadTodayPage *self)
{
  g_autofree char *day = stead_day_format (stead_store_get_today (stead_page_get_store (STEAD_PAGE (self))),
                                           STEAD_DAY_STYLE_LONG);

  gtk_label_set_text (GTK_LABEL (self->day), day);
}

static void
stead_today_page_refresh (SteadPage *page)
{
  SteadTodayPage *self = STEAD_TODAY_PAGE (page);
  g_autoptr(GError) error = NULL;
  const SteadDueAnswer *answer = stead_desk_get_due (stead_page_get_desk (page), &error);

  show_day (self);
  stead_line_entry_refresh (self->line);
  empty_box (self->dues);
  if (answer != NULL)
    show_dues (self, answer);
  else
    gtk_label_set_text (GTK_LABEL (self->sentence), error->message);
  show_first_steps (self);
  show_latest (self);
}

static void
stead_today_page_constructed (GObject *object)
{
  SteadTodayPage *self = STEAD_TODAY_PAGE (object);

  G_OBJECT_CLASS (stead_today_page_parent_class)->constructed (object);
  stead_line_entry_set_desk (self->line, stead_page_get_desk (STEAD_PAGE (self)));
}

static void
stead_today_page_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), STEAD_TYPE_TODAY_PAGE);
  G_OBJECT_CLASS (stead_today_page_parent_class)->dispose (object);
}

static void
stead_today_page_class_init (SteadTodayPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->constructed = stead_today_page_constructed;
  G_OBJECT_CLASS (klass)->dispose = stead_today_page_dispose;
  STEAD_PAGE_CLASS (klass)->refresh = stead_today_page_refresh;
  g_type_ensure (STEAD_TYPE_LINE_ENTRY);
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("stead-today-page.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadTodayPage, day);
  gtk_widget_class_bind_template_child (widget_class, SteadTodayPage, sentence);
  gtk_widget_class_bind_template_child (widget_class, SteadTodayPage, line);
  gtk_widget_class_bind_template_child (widget_class, SteadTodayPage, dues);
  gtk_widget_class_bind_template_child (widget_class, SteadTodayPage, latest);
  gtk_widget_class_bind_template_child (widget_class, SteadTodayPage, latest_card);
}

static void
stead_today_page_init (SteadTodayPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_box_append (GTK_BOX (gtk_widget_get_parent (self->dues)), stead_why_box_new_folded (&self->whys));
}
