"""The W3C's MusicXML 4.0 schema, offline: the XSD that the `musicxml` package carries.

Its two imports are answered here with the attributes that it refers to, as the W3C's own xml.xsd and XLink 1.1
define them.
"""

from functools import cache
from importlib.resources import files
from typing import Any

from lxml import etree

_HEAD = '<xs:schema xmlns:xs="http://www.w3.org/2001/XMLSchema" attributeFormDefault="qualified" '
_IMPORTS = {
    "xml.xsd": _HEAD
    + """targetNamespace="http://www.w3.org/XML/1998/namespace">
  <xs:attribute name="lang"><xs:simpleType><xs:union memberTypes="xs:language"><xs:simpleType>
    <xs:restriction base="xs:string"><xs:enumeration value=""/></xs:restriction>
  </xs:simpleType></xs:union></xs:simpleType></xs:attribute>
  <xs:attribute name="space"><xs:simpleType><xs:restriction base="xs:NCName">
    <xs:enumeration value="default"/><xs:enumeration value="preserve"/>
  </xs:restriction></xs:simpleType></xs:attribute>
</xs:schema>""",
    "xlink.xsd": _HEAD
    + """targetNamespace="http://www.w3.org/1999/xlink">
  <xs:attribute name="href" type="xs:anyURI"/>
  <xs:attribute name="type" type="xs:string"/>
  <xs:attribute name="role" type="xs:anyURI"/>
  <xs:attribute name="title" type="xs:string"/>
  <xs:attribute name="show" type="xs:string"/>
  <xs:attribute name="actuate" type="xs:string"/>
</xs:schema>""",
}


class _Offline(etree.Resolver):
    def resolve(self, url: str, pubid: str, context: Any) -> Any:  # type: ignore[override]
        name = url.rsplit("/", 1)[-1]
        return self.resolve_string(_IMPORTS[name], context) if name in _IMPORTS else None  # type: ignore[call-arg]


@cache
def _schema() -> etree.XMLSchema:
    parser = etree.XMLParser(no_network=True)
    parser.resolvers.add(_Offline())
    xsd = files("musicxml") / "generate_classes" / "musicxml_4_0.xsd"
    return etree.XMLSchema(etree.fromstring(xsd.read_bytes(), parser))


def schema_errors(data: bytes) -> list[str]:
    """What the MusicXML 4.0 schema finds wrong with a file; empty when it is valid."""
    schema = _schema()
    document = etree.fromstring(data, etree.XMLParser(no_network=True, load_dtd=False, resolve_entities=False))
    return [] if schema.validate(document) else [str(error) for error in schema.error_log]  # type: ignore[attr-defined]
