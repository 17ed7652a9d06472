/* stead-ui.h - what every part of the window needs before it is made. */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Path of a file of ui/ in the resources: STEAD_UI ("stead-window.ui"). */
#define STEAD_UI(name) "/farm/steading/Steading/ui/" name

/* Registers resources and the types that .ui files name.  Any number of times;
 * needs no display. */
void stead_ui_register (void);

/* Unparents every child; the last step of dispose in each widget of ours
 * (gtk_widget_dispose_template() leaves unnamed children on GTK 4.8). */
void stead_ui_drop_children (GtkWidget *widget);

/* @text as the name that a screen reader says; replaces the name made of the class, and the
 * label of a button: from GTK 4.10 on that goes before what is said here. */
void stead_ui_name (GtkWidget  *widget,
                    const char *text);

/* Gives each drop-down below @widget the name of its label (the one whose mnemonic
 * widget it is): GTK 4.8 leaves the button inside without a name. */
void stead_ui_name_drop_downs (GtkWidget *widget);

/* Gives the items of @button's menu, which has its model, their texts as names whenever it is
 * shown: GTK 4.18 names them by labels that it hides from a screen reader. */
void stead_ui_name_menu (GtkMenuButton *button);

/* Puts @child into an expander.  While that is closed, GTK 4.8 still offers the focus
 * to what is in it, outside of any window; so then it takes none. */
void stead_ui_expander_set_child (GtkWidget *expander,
                                  GtkWidget *child);

/* An icon button without words: @icon is shown, @name is said and shown as tooltip. */
GtkWidget *stead_ui_icon_button (const char *icon,
                                 const char *name);

/* Tells a screen reader that what @stack does not show is not there: GTK 4.8 lets it read
 * all pages of a stack, one after the other. */
void stead_ui_hush_stack (GtkStack *stack);

/* Lets @label wrap between words; within one only while it has a word too long for a
 * line of its own.  Breaking within words makes GTK shape each piece of the text anew
 * for each width that it tries, which cost more than all else of a start. */
void stead_ui_wrap (GtkLabel *label);

/* A label that is there only while it has something to say: @text (nullable). */
void stead_ui_tell (GtkLabel   *label,
                    const char *text);

/* (transfer full): all that stands in @view, line by line */
char *stead_ui_read_lines (GtkTextView *view) G_GNUC_WARN_UNUSED_RESULT;

/* (transfer floating): a row for @stead_ui_row_append().  It looks like a horizontal box.
 * To wrapped text a box is dear: it seeks the width of each child for many heights, so
 * that boxes in boxes lay out every text hundreds of times.  A row asks once. */
GtkWidget *stead_ui_row_new (int spacing);

/* Puts @child at the end of @row. */
void stead_ui_row_append (GtkWidget *row,
                          GtkWidget *child);

G_END_DECLS
