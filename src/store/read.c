/* read.c - the project that a text says
 *
 * The text is walked once, element by element (libxml2's SAX 2), into a project that nobody else
 * sees yet. The first fault is kept and ends the walk. What refers to something else is looked up
 * when all is read, in the file's order. */
#include "store/store.h"

#include <glib/gi18n-lib.h>
#include <libxml/parser.h>
#include <libxml/parserInternals.h>
#include <string.h>

#include "store/carried.h"
#include "store/draft.h"
#include "store/scan.h"

G_DEFINE_QUARK (halfbond_store_error, store_error)

/* libxml2 made it const. */
#if LIBXML_VERSION >= 21200
typedef const xmlError *ErrorPointer;
#else
typedef xmlError *ErrorPointer;
#endif

/* An element of ours that is open. */
typedef struct
{
  const Element *element;
  Foreign *foreign; /* of the thing it says */
  Carried *carried; /* elements of others in it; NULL until there is one */
} Frame;

typedef struct
{
  Draft draft;
  xmlParserCtxtPtr parser;
  Place place;
  GArray *frames;       /* Frame: those open, outermost first */
  gsize carried_before; /* bytes of other namespaces in elements that are closed */
} Reader;

static Frame *
innermost (const Reader *reader)
{
  guint n = reader->frames->len;
  return n > 0 ? &g_array_index (reader->frames, Frame, n - 1) : NULL;
}

/* What is being carried at this place; NULL when it is not within an element of others. */
static Carried *
carrying (const Reader *reader)
{
  const Frame *frame = innermost (reader);
  gboolean within = frame != NULL && frame->carried != NULL && carried_depth (frame->carried) > 0;
  return within ? frame->carried : NULL;
}

static void
start_ours (Reader *reader, const Tag *tag)
{
  const Frame *outer = innermost (reader);
  Frame frame = { NULL, NULL, NULL };
  frame.foreign
      = draft_start (&reader->draft, tag, outer != NULL ? outer->element : NULL, &frame.element);
  if (frame.foreign == NULL)
    return;
  frame.foreign->attributes = carried_attributes (tag);
  reader->carried_before += strlen (frame.foreign->attributes ? frame.foreign->attributes : "");
  g_array_append_val (reader->frames, frame);
}

static void
end_ours (Reader *reader)
{
  Frame *frame = innermost (reader);
  if (frame->carried != NULL)
    {
      reader->carried_before += carried_size (frame->carried);
      frame->foreign->elements = carried_take (frame->carried);
    }
  g_array_remove_index (reader->frames, reader->frames->len - 1);
}

/* An element of no namespace is none of another one. */
static gboolean
is_carried (const Reader *reader, const Tag *tag)
{
  if (carrying (reader) != NULL)
    return TRUE;
  return reader->frames->len > 0 && tag->space != NULL && !tag_is_ours (tag);
}

/* On a line of its own, as far in as the elements of ours beside it. */
static void
start_carried (Reader *reader, const Tag *tag)
{
  Frame *frame = innermost (reader);
  g_autofree char *gap = g_strdup_printf ("\n%*s", (int) reader->frames->len * 2, "");
  if (frame->carried == NULL)
    frame->carried = carried_new ();
  carried_start (frame->carried, tag, gap);
}

static gsize
carried_bytes (const Reader *reader)
{
  gsize bytes = reader->carried_before;
  for (guint i = 0; i < reader->frames->len; i++)
    {
      const Carried *carried = g_array_index (reader->frames, Frame, i).carried;
      bytes += carried != NULL ? carried_size (carried) : 0;
    }
  return bytes;
}

/* Each says its own namespaces, so that they can take more room than they had in the file. */
static gboolean
carried_fits (Reader *reader, int line)
{
  return carried_bytes (reader) <= STORE_MAX_BYTES
         || draft_refuse (&reader->draft, line,
                          _ ("content of other namespaces takes more than %d MiB."),
                          STORE_MAX_BYTES / (1024 * 1024));
}

/* Standing perpends of a long course take more room than any text. */
static glong
most_characters (const Tag *tag, const Attribute *attribute)
{
  const Field *field = tag_is_ours (tag) && g_str_equal (tag->name, element_laid.name)
                           ? element_field (&element_laid, attribute->name)
                           : NULL;
  return field != NULL && field->kind == VALUE_LENGTHS ? STORE_MAX_LIST : STORE_MAX_NAME;
}

static gboolean
attributes_fit (Reader *reader, const Tag *tag)
{
  for (guint i = 0; i < tag->attributes->len; i++)
    {
      const Attribute *attribute = &g_array_index (tag->attributes, Attribute, i);
      const glong most = most_characters (tag, attribute);
      if (g_utf8_strlen (attribute->value, -1) <= most)
        continue;
      g_autofree char *shown = quoted (attribute->name);
      return draft_refuse (&reader->draft, attribute->line,
                           _ ("%s: %s is longer than %d characters."), tag->name, shown,
                           (int) most);
    }
  return TRUE;
}

/* Ends the walk at the first fault. */
static void
stop_at_fault (Reader *reader)
{
  if (reader->draft.fault != NULL)
    xmlStopParser (reader->parser);
}

static void
on_start (void *data, const xmlChar *name, const xmlChar *prefix, const xmlChar *space,
          int n_namespaces, const xmlChar **namespaces, int n_attributes, int n_defaulted,
          const xmlChar **attributes)
{
  Reader *reader = data;
  (void) n_defaulted;
  if (reader->draft.fault == NULL)
    {
      const char *here = reader->place.text + xmlByteConsumed (reader->parser);
      g_autoptr (Tag) tag = tag_new (&reader->place, here, name, prefix, space, n_namespaces,
                                     namespaces, n_attributes, attributes);
      if (attributes_fit (reader, tag))
        (is_carried (reader, tag) ? start_carried : start_ours) (reader, tag);
      carried_fits (reader, tag->line);
    }
  stop_at_fault (reader);
}

static void
on_end (void *data, const xmlChar *name, const xmlChar *prefix, const xmlChar *space)
{
  Reader *reader = data;
  (void) name, (void) prefix, (void) space;
  if (reader->draft.fault != NULL)
    return;
  Carried *carried = carrying (reader);
  if (carried != NULL)
    carried_end (carried);
  else
    end_ours (reader);
}

/* Text among elements of ours is white space only. */
static void
refuse_text (Reader *reader, const char *text)
{
  gsize blank = strspn (text, " \t\r\n");
  if (text[blank] == '\0' || innermost (reader) == NULL)
    return;
  /* The parser stands behind the text. */
  int line = reader->parser->input->line;
  for (const char *at = text + blank; *at != '\0'; at++)
    line -= *at == '\n';
  g_autofree char *bare = g_strstrip (g_strdup (text));
  g_autofree char *shown = quoted (bare);
  draft_refuse (&reader->draft, line, _ ("there is text in <%s>, where none belongs: %s."),
                innermost (reader)->element->name, shown);
}

static void
on_text (void *data, const xmlChar *bytes, int n)
{
  Reader *reader = data;
  if (reader->draft.fault != NULL)
    return;
  Carried *carried = carrying (reader);
  g_autofree char *text = g_strndup ((const char *) bytes, (gsize) n);
  if (carried != NULL)
    carried_text (carried, text, (gsize) n);
  else
    refuse_text (reader, text);
  carried_fits (reader, reader->parser->input->line);
  stop_at_fault (reader);
}

/* With no document type there are none but XML's own five, which come as text. */
static void
on_entity (void *data, const xmlChar *name)
{
  Reader *reader = data;
  g_autofree char *shown = quoted ((const char *) name);
  draft_refuse (&reader->draft, reader->parser->input->line, _ ("there is no entity %s."), shown);
  stop_at_fault (reader);
}

static void
on_document_type (void *data, const xmlChar *name, const xmlChar *public, const xmlChar *system)
{
  Reader *reader = data;
  (void) name, (void) public, (void) system;
  draft_refuse (&reader->draft, reader->parser->input->line,
                _ ("it has a document type (DOCTYPE); a project has none."));
  stop_at_fault (reader);
}

/* libxml2 speaks for programmers; what a builder is likely to meet is said for one. The walk ends
 * by itself. */
static void
on_error (void *data, ErrorPointer error)
{
  Reader *reader = data;
  int line = MAX (error->line, 1);
  if (error->level < XML_ERR_ERROR || reader->draft.fault != NULL)
    return;
  if (reader->parser->input == NULL || *reader->parser->input->cur == '\0')
    {
      draft_refuse (&reader->draft, line,
                    _ ("it ends too early; a part of the file seems to be missing."));
      return;
    }
  g_autofree char *reason = g_strdup (error->message ? error->message : "");
  g_strdelimit (g_strchomp (reason), "\n\r", ' ');
  g_autofree char *shown = g_utf8_make_valid (reason, -1);
  draft_refuse (&reader->draft, line, _ ("it is not well-formed XML: %s."), shown);
}

static void
frame_clear (gpointer data)
{
  carried_free (((Frame *) data)->carried);
}

static void
walk (Reader *reader, gsize n)
{
  static const xmlSAXHandler handler = {
    .initialized = XML_SAX2_MAGIC,
    .startElementNs = on_start,
    .endElementNs = on_end,
    .characters = on_text,
    .ignorableWhitespace = on_text,
    .cdataBlock = on_text,
    .reference = on_entity,
    .internalSubset = on_document_type,
    .serror = on_error,
  };
  xmlInitParser ();
  reader->frames = g_array_new (FALSE, FALSE, sizeof (Frame));
  g_array_set_clear_func (reader->frames, frame_clear);
  reader->parser = xmlNewParserCtxt ();
  *reader->parser->sax = handler;
  reader->parser->userData = reader;
  /* NOENT makes "&amp;" in a value come as '&'. Nothing else can be meant by it: scan_fault() has
   * refused every document type, and no handler here would declare an entity. */
  xmlDocPtr document = xmlCtxtReadMemory (reader->parser, reader->place.text, (int) n, NULL, NULL,
                                          XML_PARSE_NONET | XML_PARSE_NOENT);
  if (document != NULL)
    xmlFreeDoc (document);
  if (!reader->parser->wellFormed)
    draft_refuse (&reader->draft, 1, _ ("it is not well-formed XML."));
  xmlFreeParserCtxt (reader->parser);
  g_array_unref (reader->frames);
}

Project *
store_read_bytes (const char *bytes, gsize n, const char *name, GError **error)
{
  gsize kept = MIN (n, STORE_MAX_BYTES);
  /* With an end that searches can rely on. */
  g_autofree char *text = g_malloc (kept + 1);
  if (kept > 0)
    memcpy (text, bytes, kept);
  text[kept] = '\0';
  Reader reader = { .place = { text, text, 1 } };
  int line;
  draft_init (&reader.draft, name);
  g_autofree char *fault = scan_fault (text, n, &line);
  if (fault != NULL)
    draft_refuse (&reader.draft, line, "%s", fault);
  else
    walk (&reader, n);
  if (reader.draft.fault == NULL)
    draft_check (&reader.draft);
  Project *project = reader.draft.fault == NULL ? g_steal_pointer (&reader.draft.project) : NULL;
  if (project == NULL)
    g_propagate_error (error, g_steal_pointer (&reader.draft.fault));
  draft_clear (&reader.draft);
  return project;
}
