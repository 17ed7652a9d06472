/* stead-packet-repo.c - packets; what is recorded of one person is in stead-packet-record.c. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "store/stead-packet-repo.h"
#include "store/stead-show-private.h"

static const char * const all_sections[] = {
  "cover", "brief", "plan", "hours", "money", "worth", "production", "build", "skills", "roles", "journal", "own",
  "photos", "corrections", "signatures", "how", NULL
};

const char * const *
stead_packet_sections (void)
{
  return all_sections;
}

SteadPacket *
stead_packet_new (void)
{
  SteadPacket *packet = g_new0 (SteadPacket, 1);

  packet->from_on = packet->to_on = STEAD_DAY_NONE;
  packet->sections = g_ptr_array_new_with_free_func (g_free);
  return packet;
}

void
stead_packet_free (SteadPacket *packet)
{
  if (packet == NULL)
    return;
  g_free (packet->name);
  g_free (packet->brief);
  g_ptr_array_unref (packet->sections);
  g_free (packet);
}

#define PACKET_COLUMNS "id, name, person_id, event_id, from_on, to_on, brief, with_names, with_pictures"

static gpointer
packet_from_row (SteadStmt *stmt)
{
  SteadPacket *packet = stead_packet_new ();

  packet->id = sqlite3_column_int64 (stmt, 0);
  packet->name = stead_stmt_text (stmt, 1);
  packet->person_id = sqlite3_column_int64 (stmt, 2);
  packet->event_id = sqlite3_column_int64 (stmt, 3);
  packet->from_on = stead_stmt_day (stmt, 4);
  packet->to_on = stead_stmt_day (stmt, 5);
  packet->brief = stead_stmt_text (stmt, 6);
  packet->with_names = sqlite3_column_int (stmt, 7) != 0;
  packet->with_pictures = sqlite3_column_int (stmt, 8) != 0;
  return packet;
}

static gpointer
section_from_row (SteadStmt *stmt)
{
  return stead_stmt_text (stmt, 0);
}

static gboolean
read_sections (SteadStore   *store,
               SteadPacket  *packet,
               GError      **error)
{
  static const char sql[] = "SELECT section FROM packet_section WHERE packet_id = ?1 ORDER BY position";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  GPtrArray *sections;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, packet->id);
  sections = stead_repo_rows (store, stmt, section_from_row, g_free, error);
  if (sections == NULL)
    return FALSE;
  g_ptr_array_unref (packet->sections);
  packet->sections = sections;
  return TRUE;
}

GPtrArray *
stead_packet_repo_list (SteadStore  *store,
                        GError     **error)
{
  static const char sql[] = "SELECT " PACKET_COLUMNS " FROM packet ORDER BY name, id";
  g_autoptr(SteadStmt) stmt = NULL;
  g_autoptr(GPtrArray) packets = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  packets = stead_repo_rows (store, stmt, packet_from_row, (GDestroyNotify) stead_packet_free, error);
  for (guint i = 0; packets != NULL && i < packets->len; i++)
    if (!read_sections (store, packets->pdata[i], error))
      return NULL;
  return g_steal_pointer (&packets);
}

SteadPacket *
stead_packet_repo_get (SteadStore  *store,
                       gint64       id,
                       GError     **error)
{
  static const char sql[] = "SELECT " PACKET_COLUMNS " FROM packet WHERE id = ?1";
  g_autoptr(SteadStmt) stmt = NULL;
  g_autoptr(SteadPacket) packet = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, id);
  packet = stead_repo_row (store, stmt, packet_from_row, error);
  return packet != NULL && read_sections (store, packet, error) ? g_steal_pointer (&packet) : NULL;
}

static gboolean
check_sections (const SteadPacket  *packet,
                GError            **error)
{
  g_autoptr(GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);

  if (packet->sections->len == 0)
    return stead_repo_refuse (error, _("Choose at least one section for the packet."));
  for (guint i = 0; i < packet->sections->len; i++)
    {
      const char *section = packet->sections->pdata[i];

      if (!g_strv_contains (all_sections, section))
        return stead_repo_refuse (error, _("There is no section “%s”."), section);
      if (!g_hash_table_add (seen, (gpointer) section))
        return stead_repo_refuse (error, _("A section is in the packet twice. Take one of them out."));
    }
  return TRUE;
}

static gboolean
check_packet (SteadStore         *store,
              const SteadPacket  *packet,
              GError            **error)
{
  if (packet->person_id == 0 && packet->event_id == 0)
    return stead_repo_refuse (error, _("Choose whose packet it is: a person, or the team of an event."));
  if (!stead_day_is_valid (packet->from_on) || !stead_day_is_valid (packet->to_on))
    return stead_repo_refuse (error, _("Enter the first and the last day that the packet tells of."));
  if (packet->to_on < packet->from_on)
    return stead_repo_refuse (error, _("The last day lies before the first one. Change one of them."));
  return stead_repo_check_name (packet->name, error) && stead_repo_check_note (packet->brief, error) &&
         check_sections (packet, error) &&
         (packet->person_id == 0 || stead_show_check_person (store, packet->person_id, error));
}

static gboolean
write_sections (SteadStore         *store,
                const SteadPacket  *packet,
                GError            **error)
{
  static const char clear_sql[] = "DELETE FROM packet_section WHERE packet_id = ?1";
  static const char sql[] = "INSERT INTO packet_section (packet_id, position, section) VALUES (?1, ?2, ?3)";

  if (!stead_repo_run_id (store, clear_sql, packet->id, error))
    return FALSE;
  for (guint i = 0; i < packet->sections->len; i++)
    {
      g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

      if (stmt == NULL)
        return FALSE;
      sqlite3_bind_int64 (stmt, 1, packet->id);
      sqlite3_bind_int (stmt, 2, (int) i + 1);
      stead_stmt_bind_text (stmt, 3, packet->sections->pdata[i]);
      if (!stead_store_run (store, stmt, error))
        return FALSE;
    }
  return TRUE;
}

gboolean
stead_packet_repo_save (SteadStore   *store,
                        SteadPacket  *packet,
                        GError      **error)
{
  static const char insert_sql[] =
    "INSERT INTO packet (name, person_id, event_id, from_on, to_on, brief, with_names, with_pictures)"
    " VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)";
  static const char update_sql[] =
    "UPDATE packet SET name = ?1, person_id = ?2, event_id = ?3, from_on = ?4, to_on = ?5, brief = ?6, with_names = ?7,"
    " with_pictures = ?8 WHERE id = ?9";
  g_autoptr(SteadStmt) stmt = NULL;
  SteadGivenIds *ids;

  g_return_val_if_fail (STEAD_IS_STORE (store) && packet != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!check_packet (store, packet, error))
    return FALSE;
  stmt = stead_store_prepare (store, packet->id == 0 ? insert_sql : update_sql, error);
  if (stmt == NULL)
    return FALSE;
  stead_repo_bind_tidy (stmt, 1, packet->name);
  stead_stmt_bind_id (stmt, 2, packet->person_id);
  stead_stmt_bind_id (stmt, 3, packet->event_id);
  stead_stmt_bind_day (stmt, 4, packet->from_on);
  stead_stmt_bind_day (stmt, 5, packet->to_on);
  stead_repo_bind_tidy (stmt, 6, packet->brief);
  sqlite3_bind_int (stmt, 7, packet->with_names != FALSE);
  sqlite3_bind_int (stmt, 8, packet->with_pictures != FALSE);
  ids = stead_given_ids_new (&packet->id);
  return stead_given_ids_end (ids, stead_repo_save_row (store, stmt, &packet->id, error) &&
                                   write_sections (store, packet, error));
}

gboolean
stead_packet_repo_drop (SteadStore  *store,
                        gint64       id,
                        GError     **error)
{
  static const char sql[] = "DELETE FROM packet WHERE id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store) && stead_store_in_action (store), FALSE);
  return stead_show_delete (store, sql, id, error);
}
