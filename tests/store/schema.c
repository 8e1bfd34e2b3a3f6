/* schema.c - what data/schema/halfbond.rng says of a text, by libxml2 */
#include "schema.h"

#include <libxml/parser.h>
#include <libxml/relaxng.h>

#define SCHEMA HALFBOND_SOURCE_ROOT "/data/schema/halfbond.rng"

#if LIBXML_VERSION >= 21200
typedef const xmlError *ErrorPointer;
#else
typedef xmlError *ErrorPointer;
#endif

static void
keep_first (void *data, ErrorPointer error)
{
  char **first = data;
  if (*first == NULL)
    *first = g_strdup_printf ("line %d: %s", error->line, error->message);
}

/* Read once; it stays for the program's life. */
static xmlRelaxNGPtr
schema (void)
{
  static xmlRelaxNGPtr schema;
  if (schema == NULL)
    {
      xmlRelaxNGParserCtxtPtr parser = xmlRelaxNGNewParserCtxt (SCHEMA);
      schema = xmlRelaxNGParse (parser);
      xmlRelaxNGFreeParserCtxt (parser);
    }
  g_assert_nonnull (schema);
  return schema;
}

char *
schema_fault (const char *text, gsize n)
{
  char *fault = NULL;
  xmlDocPtr document = xmlReadMemory (text, (int) n, NULL, NULL,
                                      XML_PARSE_NONET | XML_PARSE_NOERROR | XML_PARSE_NOWARNING);
  if (document == NULL)
    return g_strdup ("not well-formed");
  xmlRelaxNGValidCtxtPtr context = xmlRelaxNGNewValidCtxt (schema ());
  xmlRelaxNGSetValidStructuredErrors (context, keep_first, &fault);
  int result = xmlRelaxNGValidateDoc (context, document);
  g_assert_cmpint (result, >=, 0);
  g_assert_cmpint (result == 0, ==, fault == NULL);
  xmlRelaxNGFreeValidCtxt (context);
  xmlFreeDoc (document);
  return fault;
}
